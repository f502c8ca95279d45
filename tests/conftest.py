"""What all tests share: the end of a run says how many tests were skipped, and whether that was expected."""

from __future__ import annotations

import re
import socket
import tomllib
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from hypothesis import HealthCheck, settings

if TYPE_CHECKING:
    from collections.abc import Iterator

    from _pytest.terminal import TerminalReporter

# The same examples at every run, so that a change is judged by what it changed.  To look further afield:
# pytest --hypothesis-profile=wander
# How fast the examples come depends on what else the machine does, and is no fault.
CALM = settings(deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.register_profile("steady", CALM, derandomize=True)
settings.register_profile("wander", CALM, derandomize=False)
settings.load_profile("steady")

EXPECTED = tomllib.loads(Path(__file__).with_name("expected_skips.toml").read_text(encoding="utf-8"))


@pytest.fixture
def kept_port() -> Iterator[int]:
    """A port that nobody else is given, for a server that is closed and opened again; nobody listens at it meanwhile."""
    with socket.socket(proto=socket.IPPROTO_TCP) as held:
        held.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        held.bind(("127.0.0.1", 0))
        yield held.getsockname()[1]


def pytest_addoption(parser: pytest.Parser) -> None:
    """`--update-golden` writes the golden files anew; look at the difference before it is committed."""
    parser.addoption("--update-golden", action="store_true", help="write the golden files anew")


def pytest_terminal_summary(terminalreporter: TerminalReporter) -> None:
    """Prints the skipped tests against the list of reasons that are expected somewhere."""
    skipped = terminalreporter.stats.get("skipped", [])
    terminalreporter.section("skipped tests against the expected list")
    unexpected = []
    for reason, what in EXPECTED.items():
        count = sum(bool(re.search(reason, _reason(report))) for report in skipped)
        terminalreporter.line(f"{count:4d}  {what}")
    for report in skipped:
        if not any(re.search(reason, _reason(report)) for reason in EXPECTED):
            unexpected.append(report)
            terminalreporter.line(f"   !  not expected: {report.nodeid}: {_reason(report)}")
    terminalreporter.line(f"{len(skipped)} skipped, {len(unexpected)} of them not on the list")


def pytest_sessionfinish(session: pytest.Session, exitstatus: int) -> None:
    """A test that is skipped for a reason nobody expected fails the run."""
    reporter = session.config.pluginmanager.get_plugin("terminalreporter")
    if reporter is None or hasattr(session.config, "workerinput"):
        return
    skipped = reporter.stats.get("skipped", [])
    if exitstatus == 0 and any(not any(re.search(r, _reason(s)) for r in EXPECTED) for s in skipped):
        session.exitstatus = 1


def _reason(report: pytest.TestReport) -> str:
    longrepr = report.longrepr
    return str(longrepr[2]) if isinstance(longrepr, tuple) else str(longrepr)

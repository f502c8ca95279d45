"""(b) Ours and the CAD kernel in the same run; the kernel lives in an environment of its own, made when missing."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

from bench.kernel import here

ROOT = Path(__file__).parents[1]
HOME = ROOT / ".venv-bench"
GOAL = 100.0


def kernel_python() -> Path:
    """The interpreter that has the kernel; the environment is built from the locked requirements when missing."""
    python = HOME / "bin/python"
    done = HOME / "ready"
    if not done.exists():
        subprocess.run([sys.executable, "-m", "venv", HOME], check=True)
        locked = ROOT / "requirements/bench.txt"
        pip = [python, "-m", "pip", "install", "--quiet", "--disable-pip-version-check"]
        subprocess.run([*pip, "--require-hashes", "-r", locked], check=True)
        done.touch()
    return python


def report() -> None:
    """Prints both medians and their ratio."""
    print(f"\n(b) an outline of six sides and its offset; goal {GOAL:g} times faster than the kernel")
    ran = subprocess.run(
        [kernel_python(), "-m", "bench.kernel"], cwd=ROOT, capture_output=True, text=True, check=True
    )
    theirs, ours = json.loads(ran.stdout.splitlines()[-1]), here()
    gap = abs(theirs["area"] / ours["area"] - 1)
    print(
        f"kernel {theirs['ms']:.1f} ms, here {ours['ms']:.2f} ms: {theirs['ms'] / ours['ms']:.0f} times faster"
    )
    print(f"areas {theirs['area']:.1f} and {ours['area']:.1f} mm2, {gap:.4%} apart")
    if gap > 1e-3:
        raise SystemExit("The two did not build the same shape; the comparison means nothing.")


if __name__ == "__main__":
    report()

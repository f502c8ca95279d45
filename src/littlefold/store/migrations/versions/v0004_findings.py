"""What the safety rules were asked with, the units, and what was found when a draft was kept."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"


def upgrade() -> None:
    """Makes the columns and the table; of older drafts nobody knows."""
    op.add_column("draft", sa.Column("units", sa.String, nullable=False, server_default="cm"))
    for name in ("region", "us_size"):
        op.add_column("draft", sa.Column(name, sa.String))
    for name in ("paper_width", "paper_height", "cloth_width"):
        op.add_column("draft", sa.Column(name, sa.Double))
    words = ("code", "severity", "message", "rule", "cure")
    op.create_table(
        "draft_finding",
        sa.Column("child", sa.Integer, primary_key=True),
        sa.Column("place", sa.Integer, primary_key=True),
        sa.Column("nth", sa.Integer, primary_key=True),
        *(sa.Column(name, sa.String, nullable=False) for name in words),
        sa.Column("file", sa.String),
        sa.Column("line", sa.Integer),
        sa.Column("column", sa.Integer),
        *(sa.Column(name, sa.String) for name in ("piece", "edge", "point")),
        sa.Column("numbers", sa.String, nullable=False),
        sa.ForeignKeyConstraint(("child", "place"), ("draft.child", "draft.place"), ondelete="CASCADE"),
    )

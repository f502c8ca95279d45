"""Cards: children, what was measured, notes."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None


def upgrade() -> None:
    """Makes the tables."""
    op.create_table(
        "child",
        sa.Column("id", sa.Integer, primary_key=True),
        sa.Column("key", sa.String, nullable=False, unique=True),
        sa.Column("name", sa.String, nullable=False),
        sa.Column("born", sa.Date),
        sa.Column("sex", sa.String),
    )
    op.create_table(
        "measured",
        sa.Column("child", sa.Integer, sa.ForeignKey("child.id", ondelete="CASCADE"), primary_key=True),
        sa.Column("place", sa.Integer, primary_key=True),
        sa.Column("day", sa.Date, nullable=False),
        sa.Column("taken_by", sa.String, nullable=False),
        sa.Column("over", sa.String, nullable=False),
    )
    op.create_table(
        "reading",
        sa.Column("child", sa.Integer, primary_key=True),
        sa.Column("place", sa.Integer, primary_key=True),
        sa.Column("nth", sa.Integer, primary_key=True),
        sa.Column("name", sa.String, nullable=False),
        sa.Column("mm", sa.Double, nullable=False),
        sa.ForeignKeyConstraint(("child", "place"), ("measured.child", "measured.place"), ondelete="CASCADE"),
    )
    op.create_table(
        "note",
        sa.Column("child", sa.Integer, sa.ForeignKey("child.id", ondelete="CASCADE"), primary_key=True),
        sa.Column("place", sa.Integer, primary_key=True),
        sa.Column("day", sa.Date, nullable=False),
        sa.Column("text", sa.String, nullable=False),
    )

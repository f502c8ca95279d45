"""Past drafts and their fittings."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"


def upgrade() -> None:
    """Makes the tables."""
    op.create_table(
        "draft",
        sa.Column("child", sa.Integer, sa.ForeignKey("child.id", ondelete="CASCADE"), primary_key=True),
        sa.Column("place", sa.Integer, primary_key=True),
        sa.Column("made", sa.Date, nullable=False),
        sa.Column("tape", sa.String, nullable=False),
        sa.Column("language", sa.String, nullable=False),
        sa.Column("pattern_hash", sa.String, nullable=False),
        sa.Column("let_down", sa.Double, nullable=False),
        sa.Column("follows", sa.Integer),
        sa.Column("age_months", sa.Double),
        sa.Column("sex", sa.String),
        sa.Column("nickname", sa.String, nullable=False),
    )
    _part_of_draft(
        "draft_recipe",
        sa.Column("name", sa.String, nullable=False),
        sa.Column("text", sa.String, nullable=False),
    )
    _part_of_draft(
        "draft_choice",
        sa.Column("name", sa.String, nullable=False),
        sa.Column("number", sa.Double),
        sa.Column("word", sa.String),
    )
    _part_of_draft(
        "draft_reading",
        sa.Column("name", sa.String, nullable=False),
        sa.Column("mm", sa.Double, nullable=False),
        sa.Column("origin", sa.String, nullable=False),
        sa.Column("spread", sa.Double, nullable=False),
    )
    _part_of_draft(
        "fitting", sa.Column("day", sa.Date, nullable=False), sa.Column("showed", sa.String, nullable=False)
    )


def _part_of_draft(name: str, *columns: sa.Column[object]) -> None:
    op.create_table(
        name,
        sa.Column("child", sa.Integer, primary_key=True),
        sa.Column("place", sa.Integer, primary_key=True),
        sa.Column("nth", sa.Integer, primary_key=True),
        *columns,
        sa.ForeignKeyConstraint(("child", "place"), ("draft.child", "draft.place"), ondelete="CASCADE"),
    )

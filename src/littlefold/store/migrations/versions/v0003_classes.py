"""Classes and their pupils; what of the box is the sample."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"


def upgrade() -> None:
    """Makes the tables."""
    op.create_table(
        "sewing_class",
        sa.Column("id", sa.Integer, primary_key=True),
        sa.Column("key", sa.String, nullable=False, unique=True),
        sa.Column("name", sa.String, nullable=False),
        sa.Column("recipe", sa.String, nullable=False),
        sa.Column("sample", sa.String),
    )
    op.create_table(
        "pupil",
        _of_class(),
        sa.Column("nth", sa.Integer, primary_key=True),
        sa.Column("child", sa.Integer, sa.ForeignKey("child.id", ondelete="CASCADE"), nullable=False),
    )
    op.create_table(
        "class_choice",
        _of_class(),
        sa.Column("nth", sa.Integer, primary_key=True),
        sa.Column("name", sa.String, nullable=False),
        sa.Column("word", sa.String, nullable=False),
    )
    op.create_table(
        "sample_child",
        sa.Column("child", sa.Integer, sa.ForeignKey("child.id", ondelete="CASCADE"), primary_key=True),
        sa.Column("state", sa.String, nullable=False),
    )
    op.create_table(
        "mark",
        sa.Column("name", sa.String, primary_key=True),
        sa.Column("word", sa.String, nullable=False),
    )


def _of_class() -> sa.Column[object]:
    key = sa.ForeignKey("sewing_class.id", ondelete="CASCADE")
    return sa.Column("sewing_class", sa.Integer, key, primary_key=True)

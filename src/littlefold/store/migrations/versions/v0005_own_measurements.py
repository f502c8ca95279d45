"""What the readings of recipes' own measurements mean."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0005"
down_revision = "0004"


def upgrade() -> None:
    """Makes the table; of readings that were taken in before nobody knows."""
    op.create_table(
        "own_measurement",
        sa.Column("child", sa.Integer, primary_key=True),
        sa.Column("place", sa.Integer, primary_key=True),
        sa.Column("nth", sa.Integer, primary_key=True),
        *(sa.Column(name, sa.String, nullable=False) for name in ("name", "recipe", "how")),
        sa.ForeignKeyConstraint(("child", "place"), ("measured.child", "measured.place"), ondelete="CASCADE"),
    )

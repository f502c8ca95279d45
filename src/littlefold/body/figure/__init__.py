"""The drawn figure: a plain, faceless child form, and on it the tape of one measurement."""

from littlefold.body.figure.tape_figure import tape_figure

__all__ = ["tape_figure"]

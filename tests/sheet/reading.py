"""Reads the pages of a PDF back with pypdf: every stroked path in millimetres from the lower left corner.

Nothing of the product is used here.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from io import BytesIO

import pypdf
from pypdf.generic import ContentStream

POINT = 25.4 / 72  # millimetres in a unit of PDF user space (ISO 32000-1, 8.3.2.3)


@dataclass
class Inked:
    """One subpath that was stroked or filled: its pieces as tuples of 2 or 4 points [mm]."""

    pieces: list
    width: float
    dash: tuple
    filled: bool

    @property
    def start(self):
        return self.pieces[0][0]

    @property
    def end(self):
        return self.pieces[-1][-1]

    def points(self, steps=64):
        """Points along it; curves by the formula of Bernstein."""
        found = [self.start]
        for piece in self.pieces:
            if len(piece) == 2:
                found.append(piece[1])
                continue
            for k in range(1, steps + 1):
                t, s = k / steps, 1 - k / steps
                weights = (s**3, 3 * s * s * t, 3 * s * t * t, t**3)
                found.append(
                    tuple(sum(w * p[i] for w, p in zip(weights, piece, strict=True)) for i in (0, 1))
                )
        return found


@dataclass
class ReadPage:
    width: float
    height: float
    text: str
    inked: list = field(default_factory=list)
    clips: list = field(default_factory=list)


def times(m, n):
    a, b, c, d, e, f = m
    g, h, i, j, k, l = n  # noqa: E741 - the six numbers of a matrix
    return (
        a * g + b * i,
        a * h + b * j,
        c * g + d * i,
        c * h + d * j,
        e * g + f * i + k,
        e * h + f * j + l,
    )


class Pen:
    """Follows the operators of a content stream."""

    def __init__(self, page):
        self.page, self.stack = page, []
        self.matrix, self.width, self.dash = (1, 0, 0, 1, 0, 0), 1.0, ()
        self.paths, self.here, self.clip = [], None, False

    def place(self, x, y):
        a, b, c, d, e, f = self.matrix
        return ((a * x + c * y + e) * POINT, (b * x + d * y + f) * POINT)

    def move(self, x, y):
        self.paths.append([])
        self.first = self.here = self.place(x, y)

    def line(self, point):
        self.paths[-1].append((self.here, point))
        self.here = point

    def run(self, operands, operator):
        values = [float(v) for v in operands if isinstance(v, (int, float))]
        if operator == b"q":
            self.stack.append((self.matrix, self.width, self.dash))
        elif operator == b"Q":
            self.matrix, self.width, self.dash = self.stack.pop()
        elif operator == b"cm":
            self.matrix = times(values, self.matrix)
        elif operator == b"w":
            self.width = values[0]
        elif operator == b"d":
            self.dash = tuple(float(v) * POINT for v in operands[0])
        else:
            self.draw(values, operator)

    def draw(self, values, operator):
        if operator == b"m":
            self.move(*values)
        elif operator == b"l":
            self.line(self.place(*values))
        elif operator == b"c":
            p, q, r = (self.place(*values[k : k + 2]) for k in (0, 2, 4))
            self.paths[-1].append((self.here, p, q, r))
            self.here = r
        elif operator == b"re":
            self.rectangle(*values)
        elif operator == b"h":
            self.close()
        elif operator in (b"W", b"W*"):
            self.clip = True
        elif operator in (b"S", b"s", b"f", b"f*", b"B", b"B*", b"n"):
            self.paint(operator)
        else:
            assert operator not in (b"v", b"y", b"Do", b"sh"), f"the reader does not know {operator}"

    def rectangle(self, x, y, w, h):
        self.move(x, y)
        for corner in ((x + w, y), (x + w, y + h), (x, y + h)):
            self.line(self.place(*corner))
        self.close()

    def close(self):
        if self.here != self.first:
            self.line(self.first)

    def paint(self, operator):
        scale = abs(self.matrix[0] * self.matrix[3] - self.matrix[1] * self.matrix[2]) ** 0.5 * POINT
        shapes = [Inked(p, self.width * scale, self.dash, operator[:1] in b"fB") for p in self.paths if p]
        if self.clip:
            self.page.clips.extend(shapes)
        if operator != b"n":
            self.page.inked.extend(shapes)
        self.paths, self.clip = [], False


def read(pdf):
    """The pages of a PDF file."""
    reader = pypdf.PdfReader(BytesIO(pdf))
    return [_page(page, reader) for page in reader.pages]


def _page(page, reader):
    box = page.mediabox
    found = ReadPage(float(box.width) * POINT, float(box.height) * POINT, page.extract_text())
    pen = Pen(found)
    for operands, operator in ContentStream(page["/Contents"], reader).operations:
        pen.run(operands, operator)
    return found

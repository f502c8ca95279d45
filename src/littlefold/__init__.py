"""Littlefold: a readable recipe and a child's measurements become a checked, full-size pattern.

The flow stands on one page in `littlefold.pipeline`; the folders are its stages, and each imports only what
stands below it.
"""

__version__ = "0.1.0"

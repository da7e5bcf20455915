"""Mutants of packs: one edit of text each, and the finding that is meant for it."""
from . import work, facts, words, more  # noqa: F401
from .clean import variations  # noqa: F401
from .packs import KINDS, PACKS  # noqa: F401

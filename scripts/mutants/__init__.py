"""Mutants of packs: one edit of text each, and the finding that is meant for it."""
from . import work, facts, words, more  # noqa: F401
from .clean import variations  # noqa: F401
from .packs import KINDS, PACKS  # noqa: F401

# Why some mutants of a kind are not told: they leave a pack in which nothing contradicts anything.
REASONS = {
    "a press dropped": "what it does is felt or measured at a later step, and nothing on the card says that it must be done",
    "two fittings swapped": "told by what stands between them: one is tightened before it is on",
    "no way of holding": "the step gives its own way of holding, and the card's is not used",
    "a clicker's way turned round": "no sentence of that pack says a way",
    "a step's way turned round": "the step turns it to and fro, or the card gives no way for it",
    "a wrong figure in words": "the card gives that figure too, for another part",
}

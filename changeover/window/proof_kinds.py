"""The sorts of proof in the order of their pills; each view is imported when first shown."""

from changeover.window.pages import PageLine

PROOFS: tuple[PageLine, ...] = (
    PageLine("taken", "taken", "changeover.window.proof_taken", "TakenView"),
)

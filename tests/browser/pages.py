"""Every page there is, for the tests that look at all of them."""

PAGES = (
    "/ground",
    "/ground/bench",
    "/count",
    "/choose",
    "/choose/questions",
    "/choose/bench",
    "/choose/brook-edge",
    "/prepare",
    "/prepare?unit=orchard-side&day=2026-10-09",
    "/shelf",
    "/shelf/triclopyr-ester-4-ec",
    "/facts",
    "/facts?q=buckthorn",
    "/facts/rhca3",
    "/facts/acpl",
    "/facts/glyphosate",
    "/facts/gloves",
    "/facts/L26",
    "/facts/conflicts",
    "/style",
)

"""A made-up cooperative as a story: four weeks of work, counted back from an anchor day."""

"""The log itself: append, read by subject, stale list, sheets as phones are told of them."""

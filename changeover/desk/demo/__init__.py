"""The demo store: built from text files, and a working copy to try things on."""

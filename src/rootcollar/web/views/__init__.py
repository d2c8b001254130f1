"""From values of the rooms to plain words and numbers for the templates; nothing is computed here that a room knows."""

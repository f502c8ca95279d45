"""What a maker or learner reads: instruction sheets, step pictures, and the draft as data."""

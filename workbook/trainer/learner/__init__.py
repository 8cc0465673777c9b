"""A set as its learner has it: who they are, their questions and tries, the sheet that is handed in."""

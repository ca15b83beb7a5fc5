"""What is measured: one file for each part of the program, each with `measured()`, rows of goals and further text."""

//! What is wrong or at risk in a house, with why, what to do, the source and the caution.

"""A handbook as one PDF: what stands round the drills, the drills, and what is counted over them."""

"""The court on screen: a picture kept in step with the drill, and the tools that draw on it."""

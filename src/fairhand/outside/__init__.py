"""The world outside this machine: asked at the writer's word alone, and only for what is named."""

"""Where one sentence ends and the next begins: splices, fused sentences, fragments."""

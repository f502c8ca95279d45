"""The workroom in the browser: pages over the pipeline, for one maker at her own table."""

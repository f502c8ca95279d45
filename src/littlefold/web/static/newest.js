// The newest wish wins: while one is worked on, only the last of those that come meanwhile is kept.

/**
 * @param {(wish: T) => Promise<void>} work  fulfils one wish; a failure is its own to tell
 * @returns {(wish: T) => Promise<void>}  resolves when nothing is left to do
 * @template T
 */
export function newest(work) {
  let running = null;
  let waiting = null;
  async function run(wish) {
    waiting = { wish };
    try {
      while (waiting) {
        const next = waiting.wish;
        waiting = null;
        await work(next);
      }
    } finally {
      running = null;
    }
  }
  return (wish) => {
    if (running) waiting = { wish };
    else running = run(wish);
    return running;
  };
}

/** Calls `work` when nothing was asked for `calm` milliseconds. */
export function whenCalm(work, calm) {
  let timer = 0;
  return (...words) => {
    clearTimeout(timer);
    timer = setTimeout(() => work(...words), calm);
  };
}

/**
 * Rows of simultaneous samples, thinned at the end to a bounded number of points in such a way that no series loses an
 * extreme: time is cut into equal parts, and of each part the rows that hold some series' smallest or largest value are
 * kept, with the first and the last row of all and every row marked as the edge of a sudden change.
 */
export class TracePoints {
  readonly #width: number;
  readonly #rows: Float64Array[] = [];
  readonly #edges = new Set<number>();

  /** `width` numbers in a row; the first is the time. */
  constructor(width: number) {
    this.#width = width;
  }

  /** Adds a row; gives its array to be filled. */
  add(edge: boolean): Float64Array {
    const row = new Float64Array(this.#width);
    if (edge) this.#edges.add(this.#rows.length);
    this.#rows.push(row);
    return row;
  }

  /** Series by place in the row, at most about `most` points long. */
  series(most: number): readonly Float64Array[] {
    const kept = this.#rows.length <= most ? this.#rows : this.#thinned(most);
    return Array.from({ length: this.#width }, (_, k) => Float64Array.from(kept, (row) => row[k] as number));
  }

  #thinned(most: number): readonly Float64Array[] {
    const rows = this.#rows;
    const last = rows.length - 1;
    const keep = new Set([0, last, ...[...this.#edges].slice(0, most / 4)]);
    const parts = Math.max(1, Math.floor((most - keep.size) / (2 * (this.#width - 1))));
    const from = (rows[0] as Float64Array)[0] as number;
    const span = ((rows[last] as Float64Array)[0] as number) - from;
    let start = 0;
    for (let part = 1; part <= parts; part += 1) {
      let end = start;
      const until = from + (span * part) / parts;
      while (end <= last && (part === parts || ((rows[end] as Float64Array)[0] as number) < until)) end += 1;
      if (end === start) continue;
      for (let k = 1; k < this.#width; k += 1) {
        let low = start;
        let high = start;
        for (let i = start + 1; i < end; i += 1) {
          const value = (rows[i] as Float64Array)[k] as number;
          if (value < ((rows[low] as Float64Array)[k] as number)) low = i;
          if (value > ((rows[high] as Float64Array)[k] as number)) high = i;
        }
        keep.add(low);
        keep.add(high);
      }
      start = end;
    }
    return [...keep].sort((a, b) => a - b).map((i) => rows[i] as Float64Array);
  }
}

/**
 * Thins regions to lines one pixel wide that keep their connections (Zhang and Suen, Communications of the ACM 27(3),
 * 1984). `pixels` lists the set pixels of `mask`, none of them on the picture's edge; `mask` is changed in place. Gives
 * back what is left of the list.
 */
export function thin(mask: Uint8Array, width: number, pixels: readonly number[]): number[] {
  const around = [-width, -width + 1, 1, width + 1, width, width - 1, -1, -width - 1];
  const ring = new Uint8Array(8);
  let left = [...pixels];
  for (let changed = true; changed; ) {
    changed = false;
    for (const second of [false, true]) {
      const gone: number[] = [];
      for (const at of left) {
        let set = 0;
        for (let k = 0; k < 8; k++) {
          ring[k] = mask[at + around[k]!]!;
          set += ring[k]!;
        }
        if (set < 2 || set > 6) continue;
        let rises = 0;
        for (let k = 0; k < 8; k++) if (ring[k] === 0 && ring[(k + 1) & 7] === 1) rises++;
        if (rises !== 1) continue;
        const [north, east, south, west] = [ring[0]!, ring[2]!, ring[4]!, ring[6]!];
        if (second ? north * east * west !== 0 : north * east * south !== 0) continue;
        if (second ? north * south * west !== 0 : east * south * west !== 0) continue;
        gone.push(at);
      }
      for (const at of gone) mask[at] = 0;
      if (gone.length === 0) continue;
      changed = true;
      left = left.filter((at) => mask[at] === 1);
    }
  }
  return left;
}

import { useEffect, useRef } from 'react';
import type { Box } from '#base/geometry/box.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { boxOfPattern } from '#pattern/pins.ts';
import { cameraOn } from '../sheet/camera.ts';
import { paint } from '../sheet/paint.ts';
import { sceneOf } from '../sheet/scene.ts';

/** A pattern drawn small, as the sheet draws it. Decoration: the words beside it say what it is. */
export function RecipePicture({ pattern }: { readonly pattern: Pattern | null }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    if (pattern) return drawSmall(canvas.current!, pattern);
  }, [pattern]);
  return (
    <span aria-hidden="true">
      <canvas ref={canvas} className="recipe-picture" />
    </span>
  );
}

/** Draws a piece at a time, so that the page stays free; gives back what stops it. */
function drawSmall(canvas: HTMLCanvasElement, pattern: Pattern): () => void {
  const view = { width: canvas.clientWidth, height: canvas.clientHeight };
  const ratio = devicePixelRatio;
  canvas.width = Math.round(view.width * ratio);
  canvas.height = Math.round(view.height * ratio);
  const brush = canvas.getContext('2d', { alpha: false });
  if (!brush || canvas.width === 0) return () => {};
  const shown = upperPart(boxOfPattern(pattern), view.height / view.width);
  const camera = cameraOn(shown, view);
  const [wide, high] = [view.width / camera.scale / 2, view.height / camera.scale / 2];
  const { x, y } = camera.centre;
  const seen = { left: x - wide, right: x + wide, top: y - high, bottom: y + high };
  const scene = sceneOf(pattern, null);
  const painting = { scene, camera, view, ratio, paper: null, paperShare: 0, markings: true };
  const work = paint(brush, painting, seen);
  let frame = 0;
  const go = () => {
    if (!work.next().done) frame = requestAnimationFrame(go);
  };
  go();
  return () => cancelAnimationFrame(frame);
}

/** Of a long strip the beginning, so that its stitches can be told; else all of it. */
function upperPart(box: Box, shape: number): Box {
  const most = (box.right - box.left) * shape * LONG;
  return box.bottom - box.top <= most ? box : { ...box, bottom: box.top + most };
}

/** A piece longer than so many pictures is shown in part. */
const LONG = 1.8;

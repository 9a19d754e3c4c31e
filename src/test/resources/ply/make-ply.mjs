// Writes the PLY files of this folder with the exporter of three.js 0.187.0 (MIT licence):
//   npm install three@0.187.0 && node make-ply.mjs
import { writeFileSync } from 'node:fs';
import { BufferAttribute, BufferGeometry, Mesh } from 'three';
import { PLYExporter } from 'three/addons/exporters/PLYExporter.js';

// 60 points of a twisted sheet, reproducible without a random generator.
const place = [];
const colour = [];
for (let i = 0; i < 60; i++) {
  const x = 12.5 * (i % 10);
  const y = 9.75 * Math.floor(i / 10);
  place.push(x, y, 0.001 * x * y - 1.25 + 0.37 * Math.sin(i));
  colour.push((i % 7) / 7, (i % 5) / 5, (i % 3) / 3);
}
const geometry = new BufferGeometry();
geometry.setAttribute('position', new BufferAttribute(new Float32Array(place), 3));
geometry.setAttribute('color', new BufferAttribute(new Float32Array(colour), 3));
geometry.setIndex([0, 1, 10, 1, 11, 10]);
const cloud = new Mesh(geometry);
const exporter = new PLYExporter();
writeFileSync('text.ply', exporter.parse(cloud, null, {}));
writeFileSync('little-endian.ply', Buffer.from(exporter.parse(cloud, null, { binary: true, littleEndian: true })));
writeFileSync('big-endian.ply', Buffer.from(exporter.parse(cloud, null, { binary: true, littleEndian: false })));
// What was to be written, number by number, as 32-bit floats in plain decimal.
writeFileSync('points.csv', 'x,y,z\n' + Array.from({ length: 60 }, (_, i) =>
  Array.from(new Float32Array(place.slice(3 * i, 3 * i + 3))).join(',')).join('\n') + '\n');

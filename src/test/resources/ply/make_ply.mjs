// A small warped sheet, written by three.js' PLYExporter: node make_ply.mjs FOLDER, with three 0.187.0 installed.
import { writeFileSync } from 'node:fs';
import * as THREE from 'three';
import { PLYExporter } from 'three/examples/jsm/exporters/PLYExporter.js';

const folder = process.argv[2];
const along = 7;
const across = 4;
const positions = [];
for (let i = 0; i < along; i++) {
    for (let j = 0; j < across; j++) {
        const u = i / (along - 1);
        const v = j / (across - 1);
        positions.push(1180 * u, 212 * v, 3.1 * (2 * u - 1) * (2 * v - 1) - 0.7 * Math.sin(5 * u + v));
    }
}
const triangles = [];
for (let i = 0; i + 1 < along; i++) {
    for (let j = 0; j + 1 < across; j++) {
        const k = i * across + j;
        triangles.push(k, k + 1, k + across, k + 1, k + across + 1, k + across);
    }
}
const geometry = new THREE.BufferGeometry();
geometry.setAttribute('position', new THREE.Float32BufferAttribute(positions, 3));
geometry.setIndex(triangles);
geometry.computeVertexNormals();
const colours = positions.map((_, i) => (i % 11) / 10);
geometry.setAttribute('color', new THREE.Float32BufferAttribute(colours, 3));
const mesh = new THREE.Mesh(geometry);

const exporter = new PLYExporter();
writeFileSync(`${folder}/sheet-ascii.ply`, exporter.parse(mesh, undefined, {}));
writeFileSync(`${folder}/sheet-big-endian.ply`,
    Buffer.from(exporter.parse(mesh, undefined, { binary: true, littleEndian: false })));
writeFileSync(`${folder}/sheet-little-endian.ply`,
    Buffer.from(exporter.parse(mesh, undefined, { binary: true, littleEndian: true })));
// What three.js itself holds: the positions as 32-bit numbers.
const held = Array.from(geometry.getAttribute('position').array);
writeFileSync(`${folder}/sheet-points.csv`, 'x,y,z\n'
    + held.map((value, i) => value + (i % 3 === 2 ? '\n' : ',')).join(''));

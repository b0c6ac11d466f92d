// Prints the Khronos validator's report on the glTF file named by the first argument.
import { readFileSync } from 'node:fs';
import validator from 'gltf-validator';

const report = await validator.validateBytes(new Uint8Array(readFileSync(process.argv[2])));
process.stdout.write(JSON.stringify(report));

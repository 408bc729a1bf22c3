export { allKernels } from './all-kernels.js';
export { InputFault, type Kernel, type KernelRoom } from './kernel.js';
export { kernelRoom } from './room.js';

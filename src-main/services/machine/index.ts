export { dataFolder } from './this-machine.ts';
export { announcePresence, type OwnPresence } from './presence.ts';
export { ownDataFolder, thisMachine, type MachineOptions } from './this-machine.ts';

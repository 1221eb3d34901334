import { createContext, useContext } from 'react';
import { type Clock, deviceClock } from './clock.ts';
import { deviceIds, type Ids } from './ids.ts';
import { deviceNetwork, type Network } from './network.ts';
import { deviceStorage, type Storage } from './storage.ts';

/** Everything the pages ask of the device. */
export type Ports = {
  readonly clock: Clock;
  readonly ids: Ids;
  readonly network: Network;
  readonly storage: Storage;
};

export const devicePorts: Ports = {
  clock: deviceClock,
  ids: deviceIds,
  network: deviceNetwork,
  storage: deviceStorage,
};

export const PortsContext = createContext<Ports>(devicePorts);

export function usePorts(): Ports {
  return useContext(PortsContext);
}

/** The services of the air of rooms, by the names of their procedures. */
import type { ServicesOf } from '../service.ts'
import { takeFile, withdrawFile } from './files.ts'
import { list, readings, room, setLimits } from './room.ts'
import { readFile } from './source.ts'

export const climateServices: ServicesOf<
  | 'climate.readFile'
  | 'climate.takeFile'
  | 'climate.withdrawFile'
  | 'climate.setLimits'
  | 'climate.rooms'
  | 'climate.room'
  | 'climate.readings'
> = {
  'climate.readFile': readFile,
  'climate.takeFile': takeFile,
  'climate.withdrawFile': withdrawFile,
  'climate.setLimits': setLimits,
  'climate.rooms': list,
  'climate.room': room,
  'climate.readings': readings,
}

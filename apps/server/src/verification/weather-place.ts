/** Where weather files and temperatures.csv lie. */
export class WeatherPlace {
  constructor(readonly folder: string) {}
}

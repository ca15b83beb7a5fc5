# forecast

namespace Logbook.Demo.Line;

/// <summary>The flash vessel: liquor cools by giving off steam under a slight vacuum, and grows stronger.</summary>
internal static class Cooler
{
    /// <summary>Green liquor lowers the vapour pressure of its water to this share.</summary>
    private const double WaterActivity = 0.88;

    private const double HeatCapacity = 3.65;

    public static CooledLiquor Cool(Liquor inlet, double from, double to)
    {
        var evaporated = 1 - Math.Exp(-HeatCapacity * (from - to) / Water.LatentHeat((from + to) / 2));
        var density = LiquorDensity.Of(inlet, from);
        // Water leaves, soda stays: per kilogram it is stronger by what evaporated, and a colder cubic metre holds more kilograms.
        var outlet = inlet * (1 / (1 - evaporated));
        for (var i = 0; i < 4; i++)
        {
            outlet = inlet * (LiquorDensity.Of(outlet, to) / density / (1 - evaporated));
        }

        return new CooledLiquor(outlet, evaporated * density, WaterActivity * Water.VapourPressure(to));
    }
}

/// <summary>What leaves the cooler.</summary>
/// <param name="Steam">kg a m3 of liquor that came in.</param>
/// <param name="Pressure">kPa absolute over the liquor.</param>
internal sealed record CooledLiquor(Liquor Liquor, double Steam, double Pressure);

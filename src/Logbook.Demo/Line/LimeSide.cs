namespace Logbook.Demo.Line;

/// <summary>The lime silo, and the dose as the people set it: from what they know of liquor and lime, some hours late.</summary>
internal sealed class LimeSide(GreenMoment start, double availability)
{
    /// <summary>CaO for each mass of carbonate (as Na2O) converted: molar masses.</summary>
    private const double LimeForCarbonate = Molar.CaO / Molar.Na2O;

    /// <summary>0 to 1; a little above what the line reaches, because the last lime does not react in time.</summary>
    private const double AimedCausticity = 0.826;

    /// <summary>t.</summary>
    private const double SiloCapacity = 600;

    private double _silo = 0.62 * SiloCapacity;
    private double _known = Wanted(start.Cooled.Liquor) / availability;

    public LimeMoment Step(GreenMoment green, Levers levers, double dtHours)
    {
        var right = Wanted(green.Cooled.Liquor) / levers[Lever.Availability];
        _known += (right - _known) * dtHours / 4;
        var lime = _known * levers[Lever.LimeFactor];
        var feed = lime * green.Flow / 1000;
        var kiln = feed + levers[Lever.KilnLime] + (((0.62 * SiloCapacity) - _silo) / 24);
        _silo += (kiln - feed) * dtHours;
        return new LimeMoment(lime, feed, levers[Lever.Availability], levers[Lever.LimeTemperature], 100 * _silo / SiloCapacity);
    }

    /// <summary>kg CaO a m3 that bring the liquor to the causticity aimed at.</summary>
    private static double Wanted(Liquor liquor) =>
        LimeForCarbonate * liquor.Tta * (1 - liquor.SulphidityTta) * (AimedCausticity - liquor.Causticity);
}

/// <summary>The lime as it really is at one moment.</summary>
/// <param name="Lime">kg lime a m3 of green liquor.</param>
/// <param name="Feed">t/h.</param>
/// <param name="Availability">0 to 1.</param>
internal sealed record LimeMoment(double Lime, double Feed, double Availability, double Temperature, double SiloLevel);

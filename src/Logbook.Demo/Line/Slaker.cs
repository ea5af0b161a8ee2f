namespace Logbook.Demo.Line;

/// <summary>Lime meets liquor: heat, grits and the first and largest part of the reaction.</summary>
/// <param name="start">What is in it at the start.</param>
/// <param name="boilingPoint">Of its content at a strength of 120 g/L as Na2O, degC.</param>
internal sealed class Slaker(Slurry start, double boilingPoint)
{
    /// <summary>kJ/kg CaO; CRC Handbook formation enthalpies give -64.5 kJ/mol.</summary>
    private const double SlakingHeat = 1150;

    private const double LimeHeatCapacity = 0.9;

    private readonly ReactingTank _tank = new(volume: 75, rate: 15, start);

    public double Temperature { get; private set; } = 99;

    /// <summary>kg water a m3 of green liquor that leave as steam.</summary>
    public double Evaporation { get; private set; } = SlakerFeed.UsualEvaporation;

    public double BoilingPoint { get; private set; } = 104;

    public Slurry Content => _tank.Content;

    /// <summary>One step; returns what overflows to the classifier.</summary>
    public Slurry Step(SlakerFeed feed, double dtHours)
    {
        // 0.04 K for each g/L: the slope of the boiling points of green liquor between 100 and 140 g/L.
        BoilingPoint = boilingPoint + (0.041 * (feed.Liquor.Tta - 120));
        Evaporation = feed.Evaporation + NearBoiling();
        Warm(feed, dtHours);
        var mass = LiquorDensity.Of(feed.Liquor, feed.Temperature) + feed.Lime - feed.Grits - Evaporation;
        var inflow = new Slurry(feed.Liquor, feed.AvailableCaO / Molar.CaO, 0, feed.Lime - feed.AvailableCaO - feed.Grits, mass);
        return _tank.Step(inflow, feed.Flow, dtHours);
    }

    private void Warm(SlakerFeed feed, double dtHours)
    {
        var perKelvin = LiquorDensity.Of(feed.Liquor, feed.Temperature) * feed.HeatCapacity;
        var limePerKelvin = feed.Lime * LimeHeatCapacity;
        var settled = ((perKelvin * feed.Temperature) + (limePerKelvin * feed.LimeTemperature)
            + (feed.AvailableCaO * SlakingHeat) - (Evaporation * Water.LatentHeat(Temperature))) / (perKelvin + limePerKelvin);
        Temperature += (settled - Temperature) * feed.Flow * dtHours / _tank.Volume;
        Temperature = Math.Min(Temperature, BoilingPoint);
    }

    /// <summary>Steam that comes only when the bowl is about to boil: it takes the heat that would carry it over.</summary>
    private double NearBoiling() => 20 * Math.Exp((Temperature - BoilingPoint) / 0.4);
}

/// <summary>What goes into the slaker, per m3 of green liquor where it is not a flow.</summary>
/// <param name="Liquor">Counted at <paramref name="Temperature"/>.</param>
/// <param name="Flow">m3/h.</param>
/// <param name="Lime">kg lime as it comes.</param>
/// <param name="Availability">CaO in it that reacts, 0 to 1.</param>
/// <param name="GritsShare">Of the lime, raked out unslaked, 0 to 1.</param>
internal sealed record SlakerFeed(
    Liquor Liquor, double Temperature, double Flow, double Lime, double Availability, double LimeTemperature, double GritsShare, double Evaporation)
{
    /// <summary>kg water a m3 of green liquor.</summary>
    public const double UsualEvaporation = 7.2;

    public double AvailableCaO => Lime * Availability;

    public double Grits => Lime * GritsShare;

    /// <summary>kJ/kg K; a fit on Laliberté's heat capacity model for green liquor.</summary>
    public double HeatCapacity => 4.21 - (7.24e-3 * Liquor.Tta) + (2.20e-5 * Liquor.Tta * Liquor.Tta);
}

namespace Logbook.Demo.Line;

/// <summary>Slaker and three causticizers in a row.</summary>
internal sealed class HotSide
{
    /// <summary>Each, m3: three quarters of an hour at usual flow, so that a change of the dose needs two to three hours to the white liquor.</summary>
    private const double CausticizerVolume = 225;

    /// <summary>Share of what is left to react that reacts in an hour, 0.04 a minute.</summary>
    private const double Rate = 2.4;

    private readonly Slaker _slaker;
    /// <summary>K that the causticizers lose to the air, each.</summary>
    private const double HeatLoss = 0.25;

    private readonly ReactingTank[] _causticizers;
    private readonly double[] _temperatures = [99, 98.7, 98.4];

    public HotSide(SlakerFeed feed, double boilingPoint)
    {
        var mass = LiquorDensity.Of(feed.Liquor, feed.Temperature) + feed.Lime - feed.Grits - feed.Evaporation;
        var raw = new Slurry(feed.Liquor, feed.AvailableCaO / Molar.CaO, 0, feed.Lime - feed.AvailableCaO - feed.Grits, mass);
        _slaker = new Slaker(raw, boilingPoint);
        _causticizers = [.. Enumerable.Range(0, 3).Select(_ => new ReactingTank(CausticizerVolume, Rate, raw))];
    }

    public HotMoment Step(SlakerFeed feed, double dtHours)
    {
        var flowing = _slaker.Step(feed, dtHours);
        foreach (var tank in _causticizers)
        {
            flowing = tank.Step(flowing, feed.Flow, dtHours);
        }

        Cool(feed.Flow * dtHours / CausticizerVolume);

        return new HotMoment
        {
            SlakerTemperature = _slaker.Temperature,
            BoilingPoint = _slaker.BoilingPoint,
            Evaporation = _slaker.Evaporation,
            Slaker = _slaker.Content,
            Temperatures = [.. _temperatures],
            Causticizers = [.. _causticizers.Select(t => t.Content)],
            Outflow = flowing,
            Flow = feed.Flow,
            Grits = feed.Grits * feed.Flow,
        };
    }

    /// <summary>Each causticizer follows the tank before it, as fast as its content is displaced.</summary>
    private void Cool(double displaced)
    {
        var inflow = _slaker.Temperature;
        for (var i = 0; i < _temperatures.Length; i++)
        {
            var before = _temperatures[i];
            _temperatures[i] += (inflow - HeatLoss - before) * displaced;
            inflow = before;
        }
    }
}

/// <summary>The hot side as it really is at one moment.</summary>
internal sealed record HotMoment
{
    public required double SlakerTemperature { get; init; }

    public required double BoilingPoint { get; init; }

    /// <summary>kg a m3 of green liquor.</summary>
    public required double Evaporation { get; init; }

    public required Slurry Slaker { get; init; }

    public required IReadOnlyList<Slurry> Causticizers { get; init; }

    /// <summary>Of the three causticizers, degC.</summary>
    public required IReadOnlyList<double> Temperatures { get; init; }

    /// <summary>To the white liquor filter, per m3 of green liquor.</summary>
    public required Slurry Outflow { get; init; }

    /// <summary>m3/h of green liquor that it was made from.</summary>
    public required double Flow { get; init; }

    /// <summary>kg/h dry.</summary>
    public required double Grits { get; init; }
}

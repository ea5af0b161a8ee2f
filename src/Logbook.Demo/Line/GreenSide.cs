namespace Logbook.Demo.Line;

/// <summary>From the dissolving tank to the slaker's inlet: raw tank, filter, filtered tank, cooler.</summary>
internal sealed class GreenSide
{
    /// <summary>Clean filter, m3/h at one bar: what it loses to fouling it gets back by an acid wash.</summary>
    private const double CleanPermeance = 620;

    /// <summary>Share of the feed that leaves the filter as concentrate.</summary>
    private const double Concentrate = 0.04;

    private readonly LiquorTank _raw;
    private readonly LiquorTank _filtered;

    public GreenSide(Levers levers)
    {
        var start = Liquor.Of(levers[Lever.Strength], levers[Lever.Sulphidity], levers[Lever.GreenCausticity]);
        _raw = new LiquorTank(2400, 0.52, start);
        _filtered = new LiquorTank(2600, 0.70, start);
    }

    public GreenMoment Step(Levers levers, double dtHours)
    {
        var made = Liquor.Of(levers[Lever.Strength], levers[Lever.Sulphidity], levers[Lever.GreenCausticity]);
        var cooled = Cooler.Cool(_filtered.Content, levers[Lever.RawTemperature], levers[Lever.CoolerOutlet]);
        var toCooler = levers[Lever.Flow] * cooled.Liquor.Na2S / _filtered.Content.Na2S;
        var running = levers[Lever.FilterRunning] > 0.5;
        var hoursSinceWash = running ? levers.HoursSinceChange(Lever.FilterRunning) : 0;
        var filtrate = running ? toCooler + _filtered.Restore : 0;
        var fromDissolving = levers[Lever.Flow] + (_raw.Restore * 2);

        _filtered.Step(_raw.Content, filtrate, toCooler, dtHours);
        _raw.Step(made, fromDissolving, filtrate, dtHours);
        return new GreenMoment
        {
            Made = made,
            Raw = _raw.Content,
            RawTemperature = levers[Lever.RawTemperature],
            RawLevel = _raw.Level,
            FromDissolving = fromDissolving,
            RawDregs = levers[Lever.RawDregs],
            Filtrate = filtrate,
            FiltrateDregs = levers[Lever.FiltrateDregs],
            FilterPressureDifference = filtrate / (CleanPermeance * (1 - (0.3 * Math.Min(1, hoursSinceWash / 168)))),
            HoursSinceWash = hoursSinceWash,
            ConcentrateFlow = toCooler * Concentrate,
            Level = _filtered.Level,
            Volume = _filtered.Volume,
            Flow = levers[Lever.Flow],
            Cooled = cooled,
            ToCooler = toCooler,
            Temperature = levers[Lever.CoolerOutlet],
        };
    }
}

/// <summary>The green side as it really is at one moment.</summary>
internal sealed record GreenMoment
{
    /// <summary>From the dissolving tank, counted at <see cref="RawTemperature"/>.</summary>
    public required Liquor Made { get; init; }

    /// <summary>In the raw tank, counted at <see cref="RawTemperature"/>.</summary>
    public required Liquor Raw { get; init; }

    public required double RawTemperature { get; init; }

    public required double RawLevel { get; init; }

    public required double FromDissolving { get; init; }

    /// <summary>mg/L.</summary>
    public required double RawDregs { get; init; }

    /// <summary>m3/h.</summary>
    public required double Filtrate { get; init; }

    public required double FiltrateDregs { get; init; }

    /// <summary>bar.</summary>
    public required double FilterPressureDifference { get; init; }

    public required double HoursSinceWash { get; init; }

    public required double ConcentrateFlow { get; init; }

    public required double Level { get; init; }

    public required double Volume { get; init; }

    /// <summary>To the slaker, m3/h at <see cref="Temperature"/>.</summary>
    public required double Flow { get; init; }

    public required CooledLiquor Cooled { get; init; }

    public required double ToCooler { get; init; }

    public required double Temperature { get; init; }

    /// <summary>m3/h.</summary>
    public double Condensate => Cooled.Steam * ToCooler / 1000;

    /// <summary>Dry dregs that the filter holds back over the day, kg/h: a concentrate tank evens out its washes.</summary>
    public double Dregs => ToCooler * (RawDregs - FiltrateDregs) / 1000;
}

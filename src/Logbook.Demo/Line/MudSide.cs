namespace Logbook.Demo.Line;

/// <summary>White liquor filter, lime mud tank and filter, and the weak wash that both give.</summary>
internal sealed class MudSide
{
    /// <summary>Wash water on the white liquor filter's cake, m3/h; leaves to the weak wash.</summary>
    public const double CakeWash = 25;

    /// <summary>Share of the cake's soda that the wash takes.</summary>
    private const double Washed = 0.75;

    /// <summary>Share of the kiln feed's soda that the mud filter's showers take.</summary>
    private const double Showered = 0.7;

    /// <summary>m3/h.</summary>
    public const double ShowerWater = 10;

    private readonly MudTank _mud = new();
    private readonly LiquorTank _white;
    private readonly LiquorTank _weak = new(1500, 0.55, Liquor.Of(17, 0.25, 0.82));

    public MudSide(Liquor white) => _white = new LiquorTank(3000, 0.62, white);

    public MudMoment Step(HotMoment hot, Levers levers, double dtHours)
    {
        var (clear, volume) = hot.Outflow.Clear(WhiteLiquorMoment.CountedAt);
        var made = hot.Outflow.Solids * hot.Flow / 1000;
        var cakeLiquor = 1000 * made * ((1 / levers[Lever.CakeSolids]) - 1) / LiquorDensity.Of(clear, WhiteLiquorMoment.CountedAt);
        var whiteFlow = (volume * hot.Flow) - cakeLiquor;
        var draw = whiteFlow + levers[Lever.DigesterDraw] - _white.Restore;
        _white.Step(clear, whiteFlow, draw, dtHours);

        // People trim the draw to the mud filter when the tank's level wanders.
        var toMudFilter = 94 + (0.35 * (_mud.Level - 55));
        var cakeSoda = clear * cakeLiquor;
        var mudLiquor = _mud.Liquor;
        var toFilter = _mud.Step(made, cakeSoda * (1 - Washed), cakeLiquor + levers[Lever.ReslurryWater], toMudFilter, dtHours);
        var kilnLiquor = toFilter.Solids * ((1 / levers[Lever.KilnFeedSolids]) - 1);
        var lost = mudLiquor * (kilnLiquor * (1 - Showered));
        var toWeak = (cakeSoda * Washed) + (mudLiquor * toFilter.Liquor) - lost;
        var weakFlow = CakeWash + toFilter.Liquor - kilnLiquor + ShowerWater;
        var toDissolving = weakFlow + levers[Lever.DissolvingDraw] - _weak.Restore;
        _weak.Step(toWeak * (1 / weakFlow), weakFlow, toDissolving, dtHours);

        return new MudMoment
        {
            White = new WhiteLiquorMoment(clear, whiteFlow, _white.Level, levers[Lever.WhiteLiquorTemperature], draw),
            Made = made,
            CakeLiquor = cakeLiquor,
            CakeSolids = levers[Lever.CakeSolids],
            TankLevel = _mud.Level,
            TankDensity = _mud.Density,
            TankSolids = _mud.SolidsShare,
            TankLiquor = _mud.Liquor,
            SlurryFlow = toMudFilter,
            KilnFeed = toFilter.Solids,
            KilnFeedSolids = levers[Lever.KilnFeedSolids],
            KilnLiquor = kilnLiquor,
            SodaToKiln = lost,
            Weak = _weak.Content,
            WeakTemperature = levers[Lever.WeakWashTemperature],
            WeakLevel = _weak.Level,
            ToDissolving = toDissolving,
            Soda = (_mud.Liquor * _mud.LiquorVolume) + (_weak.Content * _weak.Volume),
            Solids = _mud.Solids,
        };
    }
}

/// <summary>The white liquor as it really is at one moment.</summary>
/// <param name="Liquor">Counted at <see cref="CountedAt"/>.</param>
/// <param name="Flow">m3/h.</param>
internal sealed record WhiteLiquorMoment(Liquor Liquor, double Flow, double Level, double Temperature, double Draw)
{
    /// <summary>degC at which its volumes and strengths are counted.</summary>
    public const double CountedAt = 95;
}

/// <summary>The mud side as it really is at one moment.</summary>
internal sealed record MudMoment
{
    public required WhiteLiquorMoment White { get; init; }

    /// <summary>Dry mud made, t/h.</summary>
    public required double Made { get; init; }

    /// <summary>Liquor in the white liquor filter's cake before washing, m3/h.</summary>
    public required double CakeLiquor { get; init; }

    /// <summary>0 to 1.</summary>
    public required double CakeSolids { get; init; }

    public required double TankLevel { get; init; }

    public required double TankDensity { get; init; }

    public required double TankSolids { get; init; }

    public required Liquor TankLiquor { get; init; }

    /// <summary>m3/h to the mud filter.</summary>
    public required double SlurryFlow { get; init; }

    /// <summary>t/h dry.</summary>
    public required double KilnFeed { get; init; }

    public required double KilnFeedSolids { get; init; }

    public required double KilnLiquor { get; init; }

    /// <summary>kmol/h.</summary>
    public required Liquor SodaToKiln { get; init; }

    public required Liquor Weak { get; init; }

    public required double WeakTemperature { get; init; }

    public required double WeakLevel { get; init; }

    public required double ToDissolving { get; init; }

    /// <summary>In the mud tank and the weak wash tank, kmol.</summary>
    public required Liquor Soda { get; init; }

    /// <summary>In the mud tank, t dry.</summary>
    public required double Solids { get; init; }
}

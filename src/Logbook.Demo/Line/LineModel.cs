namespace Logbook.Demo.Line;

/// <summary>
/// The line, moved forward a minute at a time by mass and heat balances: liquor and lime in, white liquor, mud and weak wash
/// out. It shares no arithmetic with the program's calculations, so that it can be a witness against them.
/// </summary>
internal sealed class LineModel
{
    private const double Minute = 1 / 60.0;

    private readonly Levers _levers;
    private readonly GreenSide _green;
    private readonly LimeSide _lime;
    private readonly HotSide _hot;
    private readonly MudSide _mud;

    /// <param name="changes">Real changes of the plant that were planned.</param>
    /// <param name="altitudeM">A thousand metres take away 3.4 K of boiling point.</param>
    public LineModel(IEnumerable<PlantChange> changes, double altitudeM, Chance chance)
    {
        _levers = new Levers(changes, chance);
        _green = new GreenSide(_levers);
        var green = _green.Step(_levers, Minute);
        _lime = new LimeSide(green, _levers[Lever.Availability]);
        var feed = Feed(green, _lime.Step(green, _levers, Minute));
        // 103.7 degC: green liquor of 120 g/L as Na2O at sea level; 0.6 K: the salts of mill liquor.
        _hot = new HotSide(feed, 103.7 + 0.6 - (3.4e-3 * altitudeM));
        _mud = new MudSide(_hot.Step(feed, Minute).Outflow.Clear(WhiteLiquorMoment.CountedAt).Liquor);
    }

    public Moment Step(DateTimeOffset at)
    {
        _levers.Step(at, Minute);
        var green = _green.Step(_levers, Minute);
        var lime = _lime.Step(green, _levers, Minute);
        var hot = _hot.Step(Feed(green, lime), Minute);
        return new Moment(at, green, lime, hot, _mud.Step(hot, _levers, Minute));
    }

    private SlakerFeed Feed(GreenMoment green, LimeMoment lime) =>
        new(green.Cooled.Liquor, green.Temperature, green.Flow, lime.Lime, lime.Availability, lime.Temperature,
            _levers[Lever.GritsShare], _levers[Lever.Evaporation]);
}

/// <summary>The whole line as it really is at one moment, before anyone reads it.</summary>
internal sealed record Moment(DateTimeOffset At, GreenMoment Green, LimeMoment Lime, HotMoment Hot, MudMoment Mud);

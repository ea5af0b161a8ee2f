using Logbook.Checks;
using Logbook.Contracts;
using Logbook.Journal;
using Logbook.Plant;
using Logbook.Plugins.Causticizing;
using Logbook.Plugins.Dregs;
using Logbook.Plugins.GreenLiquor;
using Logbook.Plugins.Laboratory;
using Logbook.Plugins.LimeMud;
using Logbook.Plugins.Slaking;
using Logbook.Plugins.WeakWash;
using Logbook.Plugins.WhiteLiquor;
using Logbook.Testing;

namespace Logbook.Demo.Tests;

/// <summary>One demo, made in memory with the calculations that the starter site binds.</summary>
internal sealed record DemoRun(Desk Desk, IReadOnlyList<PlantedEvent> Planted, DateTimeOffset Until, int Days)
{
    private static readonly Lazy<SiteFiles> _template =
        new(() => SiteReader.Load(Path.Combine(AppContext.BaseDirectory, "site")).Value ?? throw new InvalidOperationException("no starter site"));

    private static readonly Lazy<DemoRun> _week = new(() => Make("2026-11-25T10:14:00-05:00", 7, 1));

    private static readonly Dictionary<(int Days, int Seed), DemoRun> _long = [];

    /// <summary>So many days to an afternoon: long enough for the cross-examination to learn from the first of them.</summary>
    public static DemoRun Long(int days, int seed)
    {
        lock (_long)
        {
            return _long.TryGetValue((days, seed), out var run) ? run : _long[(days, seed)] = Make("2026-11-25T17:05:00-05:00", days, seed);
        }
    }

    /// <summary>A week that most tests look at.</summary>
    public static DemoRun Week => _week.Value;

    public static SiteFiles Template => _template.Value;

    public IEnumerable<JournalRecord> Records => Desk.Store.Read();

    public IEnumerable<(JournalRecord Record, Finding Finding)> Findings =>
        Records.SelectMany(r => r.Body is Entry entry ? entry.Findings.Select(f => (r, f)) : []);

    public static Site Site(int seed) => SiteReader.Read(DemoSite.Files(Template, seed)).Value ?? throw new InvalidOperationException("the demo's site has mistakes");

    public static DemoRun Make(string until, int days, int seed)
    {
        var end = DateTimeOffset.Parse(until, System.Globalization.CultureInfo.InvariantCulture);
        Desk? desk = null;
        var planted = DemoMill.Make(
            clock => desk = new Desk(new InMemoryJournal(), DemoSite.Files(Template, seed), Calculations(), new InlineGuard(), clock, "demo:panel"), end, days, seed);
        return new DemoRun(desk!, planted, end, days);
    }

    public PlantedEvent Event(string name) => Planted.Single(e => e.Name == name);

    private static IReadOnlyList<LoadedCalculation> Calculations()
    {
        Type[] oneOfEach = [typeof(Causticity), typeof(FlashCooling), typeof(CakeSoda), typeof(LimeFeed), typeof(CausticizingTrain), typeof(TankReserve), typeof(MudSolids), typeof(WeakWashDensity)];
        ICalculation[] all = [.. oneOfEach.SelectMany(t => t.Assembly.GetExportedTypes())
            .Where(t => t.IsAssignableTo(typeof(ICalculation)))
            .Select(t => (ICalculation)Activator.CreateInstance(t)!)];
        return [.. all.Select(c => new LoadedCalculation(c, "shipped 0.1.0"))];
    }
}

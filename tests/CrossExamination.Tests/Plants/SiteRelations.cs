using Logbook.Checks.CrossExamination;
using MathNet.Numerics.LinearAlgebra;

namespace CrossExamination.Tests.Plants;

/// <summary>
/// What a site would compute from the line's readings, two ways for each quantity. Written from the inverse formulas, apart from
/// the simulators.
/// </summary>
internal sealed class SiteRelations
{
    private const double GramsPerMl = 3.098927;

    private readonly List<Parameter> _parameters = [];
    private readonly List<Comparison> _comparisons = [];
    private readonly double _lag;

    /// <param name="lag">Hours from liming to white liquor, as the site has them.</param>
    public SiteRelations(double lag)
    {
        _lag = lag;
        _parameters.AddRange(Enum.GetValues<Tag>().Select(t => new Parameter(t.ToString(), Role.Reading, Plant.Declared[(int)t])));
        Acid = Add("acid strength", Role.Constant, .001, Tag.WhiteA, Tag.WhiteB, Tag.WhiteC, Tag.GreenA, Tag.GreenB, Tag.GreenC, Tag.WeakWash);
        GreenDensity = Method("green liquor density", 1.2, Tag.GreenDensity);
        WeakDensity = Method("weak wash density", .4, Tag.WeakWashDensity);
        Dilution = Method("soda across the slaker", 1.2, Tag.WhiteA, Tag.WhiteB, Tag.WhiteC);
        Sulphide = Method("sulphide across the slaker", .4, Tag.WhiteA, Tag.WhiteB);
        Screw = Method("screw factor", .03, Tag.LimeScrew);
        Reacted = Method("lime that reacted", .6, Tag.LimeWeigher, Tag.LimeScrew, Tag.SlakerTemperature, Tag.MudFlow);
        Rise = Method("heat of the slaker", 1.0, Tag.SlakerTemperature);
        MudFeed = Method("mud to the kiln", .015, Tag.MudFlow);
        MudMade = Method("mud from the lime", .013);
        Compare();
        Line = new Line(_parameters, [.. _comparisons.Select(c => c.Name)]);
        Constants = [.. _parameters.Select((_, i) => i == Acid ? 0.5 : 0)];
    }

    public Line Line { get; }

    public IReadOnlyList<Comparison> Comparisons => _comparisons;

    public double[] Constants { get; }

    public int Acid { get; }

    public int GreenDensity { get; }

    public int WeakDensity { get; }

    public int Dilution { get; }

    public int Sulphide { get; }

    public int Screw { get; }

    public int Reacted { get; }

    public int Rise { get; }

    public int MudFeed { get; }

    public int MudMade { get; }

    private void Compare()
    {
        Row("green liquor strength: density, titration", [Now(Tag.GreenDensity), Now(Tag.GreenTankTemperature), Typed(GreenDensity), Now(Tag.GreenC), Typed(Acid)],
            v => FromDensity(v[0], v[1]) + v[2] - (v[3] * v[4] * 2 * GramsPerMl));
        Row("weak wash strength: density, titration", [Now(Tag.WeakWashDensity), Now(Tag.WeakWashTemperature), Typed(WeakDensity), Now(Tag.WeakWash), Typed(Acid)],
            v => ((v[0] - Water(v[1])) / 1.347 * (1 + (4.55e-4 * (v[1] - 25)))) + v[2] - (v[3] * v[4] * 2));
        Row("white liquor strength: from green, titration", [Then(Tag.GreenC), Typed(Dilution), Now(Tag.WhiteC), Typed(Acid)],
            v => (((v[0] * 1.034) - v[2]) * v[3] * 2 * GramsPerMl) + v[1]);
        Row("white liquor sulphidity: from green, titration",
            [Then(Tag.GreenA), Then(Tag.GreenB), Then(Tag.GreenC), Typed(Sulphide), Now(Tag.WhiteA), Now(Tag.WhiteB), Now(Tag.WhiteC)],
            v => (200 * (v[1] - v[0]) / v[2]) + v[3] - (200 * (v[5] - v[4]) / v[6]));
        Row("lime: weigher, screw", [Now(Tag.LimeWeigher), Now(Tag.LimeScrew), Typed(Screw), Last(Tag.LimeCao), Now(Tag.GreenFlow)],
            v => (v[0] - (v[1] * 13.8 * .06 * (1 + v[2]))) * 10 * v[3] / v[4]);
        Row("lime: weigher, temperature rise", [Now(Tag.LimeWeigher), Last(Tag.LimeCao), Now(Tag.GreenFlow), Now(Tag.GreenTemperature), Now(Tag.SlakerTemperature), Typed(Rise)],
            v => (v[0] * 10 * v[1] / v[2]) - FromRise(v[3], v[4], v[1]) - v[5]);
        Row("lime: weigher, causticity",
            [
                Then(Tag.LimeWeigher), Then(Tag.LimeCao), Then(Tag.GreenFlow), Then(Tag.GreenA), Then(Tag.GreenB), Then(Tag.GreenC),
                Then(Tag.GreenTemperature), Now(Tag.WhiteA), Now(Tag.WhiteB), Now(Tag.WhiteC), Typed(Acid), Typed(Reacted),
            ],
            v => (v[0] * 10 * v[1] / v[2]) - FromCausticity(v) - v[11]);
        Row("dry mud: to the kiln, from the lime",
            [Now(Tag.MudFlow), Now(Tag.MudDensity), Typed(MudFeed), Now(Tag.LimeWeigher), Last(Tag.LimeCao), Now(Tag.Grits), Typed(MudMade)],
            v => (v[0] * 2710 * (v[1] - 980) / 1730 / 1000 * (1 + v[2])) - (((v[3] * (1 + (.7848 * v[4] / 100))) - (v[5] / 1000)) * (1 + v[6])));
    }

    private static double FromCausticity(Vector<double> v)
    {
        double White(double a, double b, double c) => ((2 * a) - b) / ((2 * a) + c - (2 * b));
        var strength = v[5] * v[10] * 2 * GramsPerMl / (1 + (5.45e-4 * (v[6] - 25)));
        var carried = 1 - (2 * (v[4] - v[3]) / v[5]);
        return .90478 * strength * carried * (White(v[7], v[8], v[9]) - White(v[3], v[4], v[5]));
    }

    private static double FromRise(double green, double slaker, double available) =>
        ((1130 * 3.65 * (slaker - green)) + (8 * 2250)) / (1150 - (.9 * (slaker - 60) / (available / 100)));

    private static double FromDensity(double density, double t)
    {
        var k = 1.50175 - (1.272e-4 * (t - 80));
        var hot = (k - Math.Sqrt((k * k) - (4 * 9.499e-4 * (density - Water(t))))) / (2 * 9.499e-4);
        return hot * (1 + (5.45e-4 * (t - 25)));
    }

    private static double Water(double t) =>
        (((((((((-2.8054253e-10 * t) + 1.0556302e-7) * t) - 4.6170461e-5) * t) - 0.0079870401) * t) + 16.945176) * t + 999.83952) / (1 + (0.01687985 * t));

    private void Row(string name, ComparisonInput[] inputs, Func<Vector<double>, double> difference) => _comparisons.Add(new Comparison(name, inputs, difference));

    private static ComparisonInput Now(Tag tag) => new((int)tag, true, Stale: 0);

    /// <summary>Taken every few hours and standing until the next.</summary>
    private static ComparisonInput Last(Tag tag) => new((int)tag, true, Stale: 4) { Background = true };

    private ComparisonInput Then(Tag tag) => new((int)tag, true, _lag, tag == Tag.LimeCao ? 4 : 2) { Background = tag == Tag.LimeCao };

    private static ComparisonInput Typed(int parameter) => new(parameter, false);

    private int Method(string name, double u, params Tag[] moves) => Add(name, Role.Method, u, moves);

    private int Add(string name, Role role, double u, params Tag[] moves)
    {
        _parameters.Add(new Parameter(name, role, u) { Moves = [.. moves.Select(m => (int)m)] });
        return _parameters.Count - 1;
    }
}

namespace Logbook.Checks.CrossExamination;

/// <summary>What may be said: one is named when its share is large enough, else the smallest group that is.</summary>
/// <param name="Named">The parameter that is named; null when none is.</param>
/// <param name="WithMethod">The method that cannot be told from the named reading.</param>
/// <param name="Group">When none is named: the most likely, together large enough; empty when nothing is wrong.</param>
internal sealed record Verdict(int? Named, int? WithMethod, IReadOnlyList<int> Group)
{
    private const double ToName = 0.7;
    private const double ToGroup = 0.9;

    /// <summary>A method that really moves the named reading is told beside it from this share on.</summary>
    private const double Beside = 0.2;

    /// <summary>Everyone that is told of, the most likely first.</summary>
    public IReadOnlyList<int> All => Named is { } named ? [named] : Group;

    /// <summary>True when one error alone does not explain it: then none is named.</summary>
    public bool Several { get; init; }

    public static Verdict Nothing { get; } = new(null, null, []);

    /// <param name="suspects">With their shares.</param>
    /// <param name="nothing">How likely it is, beside them, that nothing is wrong: this much less is one of them.</param>
    public static Verdict Of(IReadOnlyList<Suspect> suspects, double nothing = 0)
    {
        var byParameter = suspects.GroupBy(s => s.Parameter)
            .Select(g => (Parameter: g.Key, Share: g.Sum(s => s.Share), g.First().Hypothesis.WithMethod))
            .OrderByDescending(g => g.Share).ToList();
        if (byParameter.Count == 0 || !double.IsFinite(byParameter[0].Share))
        {
            return Nothing;
        }

        var best = byParameter[0];
        if (best.Share * (1 - nothing) >= ToName)
        {
            var beside = byParameter.Skip(1).Where(m => m.Share >= Beside && suspects.Any(s => s.Parameter == m.Parameter && s.Hypothesis.Moves(best.Parameter)));
            return new Verdict(best.Parameter, best.WithMethod ?? beside.Select(m => (int?)m.Parameter).FirstOrDefault(), []);
        }

        var group = new List<int>();
        var sum = 0.0;
        foreach (var (parameter, share, _) in byParameter)
        {
            group.Add(parameter);
            sum += share;
            if (sum >= ToGroup)
            {
                break;
            }
        }

        return new Verdict(null, null, group);
    }
}

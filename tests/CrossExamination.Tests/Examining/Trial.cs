using CrossExamination.Tests.Plants;
using Logbook.Checks.CrossExamination;

namespace CrossExamination.Tests.Examining;

/// <summary>One line with a fitted examination, and what it says of branches with something wrong.</summary>
internal sealed class Trial
{
    public const int Entries = 3;

    private readonly Observed _plant;
    private readonly Examiner _examiner;
    private readonly Dice _dice;

    public Trial(Plant plant, SiteRelations relations, int history, int seed)
    {
        Relations = relations;
        _plant = new Observed(plant, relations);
        _dice = new Dice(seed);
        Fitted = Thresholds.Learn(relations.Line, [.. Enumerable.Range(0, history).Select(_ => _plant.Next())]);
        _examiner = new Examiner(Fitted);
        for (var i = 0; i < 24; i++)
        {
            _examiner.Next(_plant.Next());
        }
    }

    public SiteRelations Relations { get; }

    public Fitted Fitted { get; }

    /// <summary>One more clean entry, judged.</summary>
    public Examination Clean() => _examiner.Next(_plant.Next());

    /// <summary>The entries from now on with a wrong reading, judged; the line itself goes on without it.</summary>
    public IReadOnlyList<Said> With(Fault fault, double size)
    {
        var signed = fault.OneWay ? size : size * _dice.Sign();
        return Branch(b => b.Next(fault: r => fault.Put(r, signed)), (r, since) => Compared(r, fault.Culprit, since));
    }

    public IReadOnlyList<Said> With(Fault one, Fault other) =>
        Branch(b => b.Next(fault: r => { one.Put(r, 1); other.Put(r, 1); }), (_, _) => true);

    public IReadOnlyList<Said> With(PlantStep step) => Branch(b => b.Next(step.Change), (_, _) => true);

    /// <summary>True when a row speaks that takes a value read since the fault began.</summary>
    private static bool Compared(Round round, int culprit, double since) =>
        round.Rows.Any(row => row is not null && row.Sensitivities.Any(s => s.Parameter == culprit && round.Hours - s.HoursBack >= since));

    /// <summary>Judged until it could show three times.</summary>
    private List<Said> Branch(Func<Observed, Round> next, Func<Round, double, bool> shows)
    {
        var (plant, examiner) = (_plant.Branch(_dice.Next(int.MaxValue)), _examiner.Branch());
        var since = plant.Plant.Hour + 1;
        var said = new List<Said>();
        while (said.Count(s => s.CouldShow) < Entries && said.Count < 16)
        {
            var round = next(plant);
            said.Add(new Said(examiner.Next(round), shows(round, since)));
        }

        return said;
    }
}

/// <summary>What was said of one entry, and whether what is wrong took part in a comparison there.</summary>
internal sealed record Said(Examination Examination, bool CouldShow)
{
    public Verdict Verdict => Examination.Verdict;

    public Gate Gate => Examination.Gate;
}

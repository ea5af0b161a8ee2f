using Logbook.Checks.CrossExamination;

namespace CrossExamination.Tests.Examining;

/// <summary>What was said over many trials of wrong readings, counted.</summary>
internal sealed class Score
{
    private int _trials;
    private int _first;
    private int _third;
    private int _firstAlone;
    private int _thirdAlone;
    private int _names;
    private int _rightNames;
    private int _firstNames;
    private int _rightFirstNames;
    private int _groups;
    private int _inGroup;
    private int _groupSize;
    private int _seenFirst;
    private int _seen;

    public double First => Percent(_first, _trials);

    public double Third => Percent(_third, _trials);

    public double FirstAlone => Percent(_firstAlone, _trials);

    public double ThirdAlone => Percent(_thirdAlone, _trials);

    public double NamesRight => Percent(_rightNames, _names);

    public double FirstNamesRight => Percent(_rightFirstNames, _firstNames);

    public double InGroup => Percent(_inGroup, _groups);

    public double MeanGroup => _groups == 0 ? 0 : (double)_groupSize / _groups;

    public double SeenFirst => Percent(_seenFirst, _trials);

    public double Seen => Percent(_seen, _trials);

    /// <summary>Shares that were given, with whether the first was right.</summary>
    public List<(double Share, bool Right)> Given { get; } = [];

    public void Add(int culprit, IReadOnlyList<Said> said)
    {
        _trials++;
        var could = said.First(s => s.CouldShow);
        var first = could.Verdict;
        bool Right(Verdict v) => v.Named == culprit;
        _first += Right(first) ? 1 : 0;
        _firstAlone += Right(first) && first.WithMethod is null ? 1 : 0;
        _third += said.Any(s => Right(s.Verdict)) ? 1 : 0;
        _thirdAlone += said.Any(s => Right(s.Verdict) && s.Verdict.WithMethod is null) ? 1 : 0;
        _seenFirst += could.Gate.Open ? 1 : 0;
        _seen += said.Any(s => s.Gate.Open) ? 1 : 0;
        foreach (var verdict in said.Select(s => s.Verdict).Where(v => v.Named is not null))
        {
            _names++;
            _rightNames += Right(verdict) ? 1 : 0;
        }

        if (said.FirstOrDefault(s => s.Verdict.Named is not null) is { } named)
        {
            _firstNames++;
            _rightFirstNames += Right(named.Verdict) ? 1 : 0;
        }

        foreach (var open in said.Where(s => s.Gate.Open))
        {
            _groups++;
            var group = Group(open.Examination);
            _groupSize += group.Count;
            _inGroup += group.Contains(culprit) ? 1 : 0;
        }

        Given.AddRange(said.Where(s => s.Gate.Open).SelectMany(s => s.Examination.Suspects.GroupBy(x => x.Parameter).Select(g => (g.Sum(x => x.Share), g.Key == culprit))));
    }

    /// <summary>The smallest set that reaches nine tenths, named or not.</summary>
    private static List<int> Group(Examination said)
    {
        var group = new List<int>();
        var sum = 0.0;
        foreach (var g in said.Suspects.GroupBy(s => s.Parameter).OrderByDescending(g => g.Sum(s => s.Share)))
        {
            if (sum >= 0.9)
            {
                break;
            }

            group.Add(g.Key);
            sum += g.Sum(s => s.Share);
        }

        return group;
    }

    private static double Percent(int part, int of) => of == 0 ? double.NaN : 100.0 * part / of;
}

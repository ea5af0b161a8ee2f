namespace Logbook.Plant;

/// <summary>One line's description: everything that the site folder's files say, checked and linked.</summary>
public sealed record Site
{
    /// <summary>Names the chain; letters, digits and '-'.</summary>
    public required string Id { get; init; }

    public required string Name { get; init; }

    public required TimeZoneInfo Zone { get; init; }

    /// <summary>Height above the sea, m.</summary>
    public double AltitudeM { get; init; }

    public required IReadOnlyList<ShiftTime> Shifts { get; init; }

    public required CrewPattern Crews { get; init; }

    public required IReadOnlyList<Person> People { get; init; }

    public required IReadOnlyList<Round> Rounds { get; init; }

    public required IReadOnlyList<Equipment> Equipment { get; init; }

    public required Reasons Reasons { get; init; }

    /// <summary>Every point, in the order of points.csv.</summary>
    public required IReadOnlyList<Point> Points { get; init; }

    public required IReadOnlyList<CalculationBinding> Calculations { get; init; }

    public required IReadOnlyList<Balance> Balances { get; init; }

    public required IReadOnlyList<Caution> Cautions { get; init; }

    /// <summary>No round falls due this close to a shift change, safety points excepted.</summary>
    public TimeSpan KeepClear { get; init; } = TimeSpan.Zero;

    /// <summary>Null when the site cites none: then nothing is computed per person.</summary>
    public Policy? Policy { get; init; }

    // Kept with the points that it was made of: a copy of this record may have others.
    private (IReadOnlyList<Point> Of, Dictionary<string, Point> Points)? _byTag;

    /// <summary>The point with this tag, or null. Tags are compared without regard to case.</summary>
    public Point? FindPoint(string tag)
    {
        if (_byTag is not { } byTag || !ReferenceEquals(byTag.Of, Points))
        {
            byTag = (Points, Points.ToDictionary(p => p.Tag, StringComparer.OrdinalIgnoreCase));
            _byTag = byTag;
        }

        return byTag.Points.GetValueOrDefault(tag);
    }

    public Person? FindPerson(string code) =>
        People.FirstOrDefault(p => p.Code.Equals(code, StringComparison.OrdinalIgnoreCase));

    /// <summary>A person by code, or by the full name.</summary>
    public Person? FindNamed(string codeOrName) =>
        FindPerson(codeOrName.Trim()) ?? People.FirstOrDefault(p => p.Name.Equals(codeOrName.Trim(), StringComparison.OrdinalIgnoreCase));

    public Equipment? FindEquipment(string code) =>
        Equipment.FirstOrDefault(e => e.Code.Equals(code, StringComparison.OrdinalIgnoreCase));

    public Round? FindRound(string id) =>
        Rounds.FirstOrDefault(r => r.Id.Equals(id, StringComparison.OrdinalIgnoreCase));
}

/// <summary>A shift of the day: its letter and the wall-clock time at which it starts.</summary>
public sealed record ShiftTime(string Code, TimeOnly Starts);

/// <summary>Which crew is due on which shift: a pattern of one letter a day ('o' = off), shared by all crews with an offset.</summary>
public sealed record CrewPattern(IReadOnlyList<string> Names, string Pattern, DateOnly Anchor, int OffsetDays)
{
    /// <summary>The crews whose pattern names <paramref name="shift"/> on this date: exactly one when the pattern is good.</summary>
    public IEnumerable<string> On(DateOnly date, string shift) =>
        Names.Where((_, i) => string.Equals(Letter(date.DayNumber - Anchor.DayNumber - (i * OffsetDays)), shift, StringComparison.OrdinalIgnoreCase));

    private string Letter(int day) => Pattern.Substring(((day % Pattern.Length) + Pattern.Length) % Pattern.Length, 1);
}

public enum Role { Operator, Supervisor, Engineer }

public sealed record Person(string Code, string Name, Role Role, string? Crew);

public sealed record Equipment(string Code, string Name, string Area);

/// <summary>The reasons a person may choose from, each by its digit.</summary>
public sealed record Reasons(IReadOnlyList<string> NotTaken, IReadOnlyList<string> Relief, IReadOnlyList<string> NotYet);

/// <summary>Why, by whom, for how long and after which consultation the audit may look at the walks of one person.</summary>
/// <param name="Readers">Codes of those who may see it beside the person.</param>
public sealed record Policy(string Purpose, IReadOnlyList<string> Readers, string Retention, string Consultation);

using Logbook.Plant.Reading;

namespace Logbook.Plant;

/// <summary>From the site's files to the site, or every mistake in them at once.</summary>
public static class SiteReader
{
    private static readonly string[] Required = [SiteFiles.SiteToml, SiteFiles.PointsCsv, SiteFiles.CautionsToml];

    /// <summary>Reads the files of a site folder; a mistake when a required one is missing.</summary>
    public static Parsed<SiteFiles> Load(string folder)
    {
        var files = Found(folder);
        return new(files.Unread.Count == 0 ? files : null, files.Unread);
    }

    /// <summary>As far as the files of a site folder can be read; the others stand in <see cref="SiteFiles.Unread"/>.</summary>
    public static SiteFiles Found(string folder)
    {
        var texts = new Dictionary<string, string>(StringComparer.Ordinal);
        var mistakes = new List<Mistake>();
        foreach (var name in Required)
        {
            if (OnDisk.Try(() => TextFile.Read(Path.Combine(folder, name)), out var refused) is { } text)
            {
                texts[name] = text;
                continue;
            }

            mistakes.Add(refused is FileNotFoundException or DirectoryNotFoundException
                ? new Mistake(new(name, 0, 0), $"is not in {folder}", "a site folder holds site.toml, points.csv and cautions.toml; `logbook init DIR` makes one")
                : new Mistake(new(name, 0, 0), $"cannot be read: {refused!.Message}"));
        }

        return new SiteFiles(texts) { Unread = mistakes };
    }

    /// <summary>Parses, checks and links the files.</summary>
    public static Parsed<Site> Read(SiteFiles files)
    {
        List<Mistake> mistakes = [.. files.Unread, .. Required.Where(name => !files.Texts.ContainsKey(name) && files.Unread.All(m => m.Where.File != name)).Select(name => new Mistake(new(name, 0, 0), "is missing"))];
        if (mistakes.Count > 0)
        {
            return new(null, mistakes);
        }

        var table = TomlFile.Parse(SiteFiles.SiteToml, files.Texts[SiteFiles.SiteToml], mistakes);
        var root = table is null ? null : new Fields(table, SiteFiles.SiteToml, mistakes);
        var equipment = root is null ? null : SiteSections.Equipment(root);
        var known = new KnownPoints();
        var points = PointsFile.Read(files.Texts[SiteFiles.PointsCsv], equipment?.Select(e => e.Code).ToList(), known, mistakes);
        var cautions = CautionsFile.Read(files.Texts[SiteFiles.CautionsToml], known, mistakes);
        var site = root is null ? null : Link(root, equipment!, points, known, cautions, mistakes);
        return mistakes.Count == 0 ? new(site, []) : new(null, [.. mistakes.OrderBy(m => Array.IndexOf(Required, m.Where.File)).ThenBy(m => m.Where.Line).ThenBy(m => m.Where.Column)]);
    }

    private static Site Link(
        Fields root, IReadOnlyList<Equipment> equipment, IReadOnlyList<Point> points, KnownPoints known, IReadOnlyList<Caution> cautions, List<Mistake> mistakes)
    {
        var head = root.Table("site");
        if (head is null)
        {
            root.Wrong("site", "[site] is missing", "id, name and time_zone are needed");
            head = new Fields(new TomlTable(root.Place), "[site]", []);
        }

        var shifts = SiteSections.Shifts(root);
        var crews = CrewSection.Read(root, shifts);
        var handover = root.Table("handover");
        var people = SiteSections.People(root, crews.Names);
        var site = new Site
        {
            Id = head.Code("id"),
            Name = head.Text("name"),
            Zone = SiteSections.Zone(head),
            AltitudeM = SiteSections.Altitude(head),
            Shifts = shifts,
            Crews = crews,
            People = people,
            Rounds = RoundSection.Read(root, known),
            Equipment = equipment,
            Reasons = SiteSections.Reasons(root),
            Points = points,
            Calculations = new CalculationSection(known).Read(root),
            Balances = BalanceSection.Read(root, known),
            Cautions = cautions,
            KeepClear = KeepClear(handover),
            Policy = SiteSections.Policy(root, people),
        };
        head.RefuseOthers();
        handover?.RefuseOthers();
        root.RefuseOthers();
        return site;
    }

    private static TimeSpan KeepClear(Fields? handover)
    {
        var clear = handover?.Duration("keep_clear") ?? TimeSpan.Zero;
        if (clear > TimeSpan.FromHours(2))
        {
            handover!.Wrong("keep_clear", "keep_clear leaves no time for rounds", "0m to 2h");
        }

        return clear;
    }
}

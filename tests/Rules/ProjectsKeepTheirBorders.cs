using System.Xml.Linq;

namespace Rules;

/// <summary>Folders do not keep layers apart; references do. This is the table that they must follow.</summary>
public sealed class ProjectsKeepTheirBorders
{
    private sealed record Room(string[] References, string[] Packages);

    private static readonly Dictionary<string, Room> Table = new(StringComparer.Ordinal)
    {
        ["Logbook.Contracts"] = new([], []),
        ["Logbook.Plant"] = new(["Logbook.Contracts"], ["CsvHelper", "Tomlyn"]),
        ["Logbook.Journal"] = new(["Logbook.Plant"], []),
        ["Logbook.Checks"] = new(["Logbook.Journal"], ["MathNet.Numerics"]),
        ["Logbook.Handover"] = new(["Logbook.Checks"], []),
        ["Logbook.PluginHost"] = new(["Logbook.Contracts"], ["McMaster.NETCore.Plugins"]),
        ["Logbook.Storage.LiteDb"] = new(["Logbook.Journal"], ["LiteDB", "System.IO.Hashing"]),
        ["Logbook.Storage.Postgres"] = new(["Logbook.Journal"], ["Npgsql"]),
        ["Logbook.Notes"] = new(["Logbook.Handover"], ["Scriban.Signed"]),
        ["Logbook.Screens"] = new(["Logbook.Handover"], []),
        ["Logbook.Tui"] = new(["Logbook.Screens"], ["Markdig", "System.IO.Abstractions", "Terminal.Gui", "TextMateSharp", "TextMateSharp.Grammars"]),
        ["Logbook.Demo"] = new(["Logbook.Handover"], ["Bogus"]),
        ["Logbook.Testing"] = new(["Logbook.Handover"], []),
        ["Logbook"] = new(["Logbook.Demo", "Logbook.Handover", "Logbook.Notes", "Logbook.PluginHost", "Logbook.Storage.LiteDb", "Logbook.Storage.Postgres", "Logbook.Tui"], ["System.CommandLine"]),
    };

    public static TheoryData<string> Sources() => [.. Repository.Files("src", "*.csproj")];

    public static TheoryData<string> PlugIns() => [.. Repository.Files("plugins", "*.csproj")];

    [Theory]
    [MemberData(nameof(Sources))]
    public void A_project_references_what_the_table_says_and_nothing_else(string project)
    {
        var name = Path.GetFileNameWithoutExtension(project);
        var room = Assert.Contains(name, (IDictionary<string, Room>)Table);

        Assert.Equal(room.References, References(project));
        Assert.Equal(room.Packages, Packages(project));
    }

    [Theory]
    [MemberData(nameof(Sources))]
    public void A_package_does_not_leak_into_the_projects_above(string project)
    {
        var leaking = XDocument.Parse(Repository.Text(project)).Descendants("PackageReference")
            .Where(p => p.Attribute("PrivateAssets")?.Value is not "compile")
            .Select(p => p.Attribute("Include")!.Value);

        Assert.Empty(leaking);
    }

    [Theory]
    [MemberData(nameof(PlugIns))]
    public void A_plug_in_sees_the_contracts_alone(string project)
    {
        Assert.Empty(References(project));
        Assert.Empty(Packages(project));
    }

    [Fact]
    public void One_third_party_package_lives_in_one_project()
    {
        var twice = Repository.Files("src", "*.csproj").SelectMany(Packages).GroupBy(p => p, StringComparer.Ordinal).Where(g => g.Count() > 1).Select(g => g.Key);

        Assert.Empty(twice);
    }

    [Fact]
    public void Every_project_stands_in_the_solution()
    {
        var solution = Repository.Text("Logbook.sln").Replace('\\', '/');
        var forgotten = new[] { "src", "plugins", "tests" }.SelectMany(f => Repository.Files(f, "*.csproj"))
            .Where(p => !p.StartsWith("tests/Fixtures/", StringComparison.Ordinal) && !solution.Contains(p, StringComparison.Ordinal));

        Assert.Empty(forgotten);
    }

    private static string[] References(string project) =>
        [.. XDocument.Parse(Repository.Text(project)).Descendants("ProjectReference")
            .Select(r => Path.GetFileNameWithoutExtension(r.Attribute("Include")!.Value.Replace('\\', '/')))
            .Where(r => !r.StartsWith('@'))
            .Order(StringComparer.Ordinal)];

    private static string[] Packages(string project) =>
        [.. XDocument.Parse(Repository.Text(project)).Descendants("PackageReference").Select(p => p.Attribute("Include")!.Value).Order(StringComparer.Ordinal)];
}

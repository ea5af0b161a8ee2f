using System.Text.RegularExpressions;

namespace Rules;

public sealed partial class TheTreeStaysReadable
{
    private static readonly string[] TopLevel = ["DEVELOPERS.md", "LICENSE", "Logbook.sln", "README.md", "build.cake", "plugins", "src", "templates", "tests"];

    private static readonly string[] Code = [.. new[] { "src", "plugins" }.SelectMany(f => Repository.Files(f, "*.cs"))];

    [Fact]
    public void The_top_level_holds_what_a_newcomer_expects_and_no_more()
    {
        var found = Directory.EnumerateFileSystemEntries(Repository.Root).Select(e => Path.GetFileName(e)!)
            .Where(e => !e.StartsWith('.') && e is not ("artifacts" or "TestResults" or "tools"));

        Assert.Equal(TopLevel, found.Order(StringComparer.Ordinal), StringComparer.Ordinal);
    }

    [Fact]
    public void No_source_file_is_longer_than_three_hundred_lines()
    {
        var long_ = Code.Select(f => (File: f, Lines: Repository.Text(f).Split('\n').Length - 1)).Where(f => f.Lines > 300);

        Assert.Empty(long_);
    }

    /// <summary>The build refuses a catch-all (CA1031); only the plug-in host, and the program's last border, may ask for an exception from that.</summary>
    [Fact]
    public void A_catch_all_stands_in_the_plug_in_host_alone()
    {
        var excused = Code.Where(f => f is not "src/Logbook/Program.cs" && Repository.Text(f).Contains("CA1031", StringComparison.Ordinal));

        Assert.Contains("dotnet_diagnostic.CA1031.severity = error", Repository.Text(".editorconfig"), StringComparison.Ordinal);
        Assert.All(excused, f => Assert.StartsWith("src/Logbook.PluginHost/", f, StringComparison.Ordinal));
    }

    [Fact]
    public void Nothing_is_left_for_later_in_the_code()
    {
        var found = Code.Where(f => Later().IsMatch(Repository.Text(f)));

        Assert.Empty(found);
    }

    [Fact]
    public void No_file_names_a_package_feed()
    {
        var files = Repository.Files(".", "*").Where(f => !f.StartsWith("./.git/", StringComparison.Ordinal) && !f.StartsWith(".git/", StringComparison.Ordinal))
            .Where(f => Path.GetExtension(f) is ".cs" or ".csproj" or ".props" or ".targets" or ".json" or ".md" or ".cake" or ".config" or ".sh" or "" && !f.StartsWith("artifacts/", StringComparison.Ordinal));
        var found = files.Where(f => Feed().IsMatch(Repository.Text(f)));

        Assert.Empty(found);
    }

    [GeneratedRegex(@"throw new NotImplementedException|\b(TODO|HACK|FIXME)\b", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 5000)]
    private static partial Regex Later();

    [GeneratedRegex(@"https?://[^\s""]*(nuget|/v3/index\.json|npm|artifact)", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, matchTimeoutMilliseconds: 5000)]
    private static partial Regex Feed();
}

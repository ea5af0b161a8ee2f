using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;

namespace Logbook.Screens.Tests;

/// <summary>What the rules say names commands; on the screen it names keys.</summary>
public sealed partial class InKeysTests
{
    // Said at the command line alone: the fit, the roster, a PIN that is read from a file.
    private static readonly string[] NoKey = ["examine --fit", "--for", "--from T", "--pin-file", "people pin"];

    [Theory]
    [InlineData("permit 3, Slaker: 2 counted inside; it is closed when everybody is out: count with the attendant, then carry confirm 3 --set inside=0", "count with the attendant, then 2 on the permit under c")]
    [InlineData("NOBODY HOLDS THE LINE: there is nobody to relieve; take it over with: handover accept --unattended REASON", "o on the pages of h takes it over alone")]
    [InlineData("a permit needs 'number'; --set number=VALUE", "a permit needs 'number'; number: VALUE")]
    [InlineData("the count is low; as it is", "the count is low; as it is")]
    public void A_rule_names_the_key(string said, string here) => Assert.EndsWith(here, InKeys.Of(said), StringComparison.Ordinal);

    [Fact]
    public void No_rule_names_an_option_on_the_screen()
    {
        var source = Path.Combine(Path.GetDirectoryName(Here())!, "..", "..", "src");
        var said = new[] { "Logbook.Checks", "Logbook.Handover" }
            .SelectMany(room => Directory.EnumerateFiles(Path.Combine(source, room), "*.cs", SearchOption.AllDirectories))
            .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .SelectMany(File.ReadLines).Where(line => !line.TrimStart().StartsWith("//", StringComparison.Ordinal) && Option().IsMatch(line))
            .Select(line => line.Replace("\\\"", "\"", StringComparison.Ordinal)).ToList();

        Assert.NotEmpty(said);
        Assert.All(said.Where(line => !NoKey.Any(w => line.Contains(w, StringComparison.Ordinal))), line => Assert.DoesNotMatch(Option(), InKeys.Of(line)));
    }

    private static string Here([CallerFilePath] string path = "") => path;

    [GeneratedRegex(@"[ ""]--[a-z]{2,}", RegexOptions.NonBacktracking)]
    private static partial Regex Option();
}

using System.Globalization;
using System.Text.RegularExpressions;
using Bogus;
using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Demo;

/// <summary>The invented mill's own site: the starter site with a name and people of its own.</summary>
public static partial class DemoSite
{
    /// <summary>The PIN of everybody in the demo. Nothing real hangs on it.</summary>
    public const string Pin = "270451";

    /// <summary>Everybody's PIN as it is kept. One hash serves all of them, because here it is no secret.</summary>
    public static PinBook Pins(Site site)
    {
        var one = new KeptPin(PinHash.Of(Pin), 0, null);
        return site.People.Aggregate(PinBook.Empty, (book, person) => book.With(person.Code, one));
    }

    /// <summary>The files to lay into the demo's folder.</summary>
    /// <param name="template">The starter site as shipped.</param>
    /// <param name="seed">One seed gives one set of people.</param>
    public static SiteFiles Files(SiteFiles template, int seed)
    {
        var faker = new Faker("en") { Random = new Randomizer(seed) };
        var codes = new HashSet<string>(StringComparer.Ordinal);
        var text = template.Texts[SiteFiles.SiteToml];
        text = SiteId().Replace(text, "id = \"tern-hollow-1\"", 1);
        text = SiteName().Replace(text, "name = \"Tern Hollow mill, recausticizing line 1\"", 1);
        text = PersonCodeAndName().Replace(text, _ => Invent(faker, codes));
        return new SiteFiles(new Dictionary<string, string>(template.Texts, StringComparer.Ordinal) { [SiteFiles.SiteToml] = text });
    }

    private static string Invent(Faker faker, HashSet<string> codes)
    {
        var (given, family) = (faker.Name.FirstName(), faker.Name.LastName());
        var stem = Letters().Replace(family, "").ToLowerInvariant();
        var code = stem[..Math.Min(5, stem.Length)];
        for (var n = 2; !codes.Add(code); n++)
        {
            code = stem[..Math.Min(4, stem.Length)] + n.ToString(CultureInfo.InvariantCulture);
        }

        return $"[[person]]\ncode = \"{code}\"\nname = \"{given} {family}\"\n";
    }

    [GeneratedRegex(@"(?<=^\[site\]\s*\n)id = ""[^""]*""", RegexOptions.Multiline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex SiteId();

    [GeneratedRegex(@"^name = ""[^""]*""", RegexOptions.Multiline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex SiteName();

    [GeneratedRegex(@"^\[\[person\]\]\s*\ncode = .*\nname = .*\n", RegexOptions.Multiline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex PersonCodeAndName();

    [GeneratedRegex("[^A-Za-z]", RegexOptions.None, 1000)]
    private static partial Regex Letters();
}

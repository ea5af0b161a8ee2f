using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Logbook.Journal;

namespace Logbook;

/// <summary>The JSON that the commands print: stable keys, additive only; numbers unrounded, times with offset, what is absent is left out.</summary>
internal static class Json
{
    private static readonly JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Text(JsonObject value) => value.ToJsonString(Plain);

    public static string Time(DateTimeOffset time) => time.ToString("yyyy-MM-dd'T'HH:mm:ss.FFFzzz", CultureInfo.InvariantCulture);

    public static JsonObject AddIfPresent(this JsonObject target, string key, object? value)
    {
        if (value is not null)
        {
            target[key] = Node(value);
        }

        return target;
    }

    public static JsonObject Of(Result result) => new JsonObject { ["name"] = result.Name, ["output"] = result.Output }
        .AddIfPresent("point", result.Point)
        .AddIfPresent("value", result.Value)
        .AddIfPresent("unit", result.Unit)
        .AddIfPresent("u", result.U)
        .AddIfPresent("covers", result.Covers);

    public static JsonObject Of(Finding finding) => new JsonObject { ["level"] = Word(finding.Level), ["code"] = finding.Code }
        .AddIfPresent("point", finding.Point)
        .AddIfPresent("text", finding.Text)
        .AddIfPresent("evidence", finding.Evidence)
        .AddIfPresent("settles", finding.Settles)
        .AddIfPresent("again", finding.Again)
        .AddIfPresent("of", finding.Of);

    public static string Word(Level level) => level switch { Level.Urgent => "urgent", Level.Watch => "watch", _ => "note" };

    private static JsonNode? Node(object value) => value switch
    {
        string s => JsonValue.Create(s),
        double d => JsonValue.Create(d),
        int i => JsonValue.Create(i),
        long l => JsonValue.Create(l),
        bool b => JsonValue.Create(b),
        DateTimeOffset t => JsonValue.Create(Time(t)),
        JsonNode n => n,
        IEnumerable<string> many => new JsonArray([.. many.Select(m => (JsonNode?)JsonValue.Create(m))]),
        _ => JsonValue.Create(Convert.ToString(value, CultureInfo.InvariantCulture)),
    };
}

using System.Text.Json;
using System.Text.Json.Serialization;
using Logbook.Checks;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>One reading of a draft, as it lies in the draft's file: one line of JSON. A later line of the same point stands for the earlier one.</summary>
internal sealed record DraftLine
{
    private static readonly JsonSerializerOptions Form = new() { DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull };

    public required string Round { get; init; }

    public required string By { get; init; }

    public required string Point { get; init; }

    /// <summary>What was typed, <c>-</c> for not taken; null while there is only a remark or a time.</summary>
    public string? Text { get; init; }

    /// <summary>When it was read.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>The person said when it was read; else it is the time of its Enter or the end of the walk.</summary>
    public bool AtGiven { get; init; }

    public string? Why { get; init; }

    public string? Second { get; init; }

    public string? Remark { get; init; }

    /// <summary>What was typed first.</summary>
    public string? Retyped { get; init; }

    public DateTimeOffset? WalkStart { get; init; }

    public DateTimeOffset? WalkEnd { get; init; }

    /// <summary>The entry whose reading is taken a second time.</summary>
    public long? SecondOf { get; init; }

    /// <summary>There is nothing in it to save: a time for a value that is still to come, or a remark that was taken away.</summary>
    [JsonIgnore]
    public bool IsEmpty => Text is null && Remark is null;

    [JsonIgnore]
    public TypedReading? Reading => Text is null ? null : new TypedReading(Point, Text, Place.Unknown)
    {
        At = At, Why = Why, Second = Second, Remark = Remark, Retyped = Retyped,
    };

    public string ToJson() => JsonSerializer.Serialize(this, Form);

    /// <summary>Null when the line is torn: it was never acknowledged.</summary>
    public static DraftLine? Parse(string json)
    {
        try
        {
            return JsonSerializer.Deserialize<DraftLine>(json, Form);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}

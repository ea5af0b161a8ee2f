using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace Logbook.Journal;

/// <summary>Which kind of record has which form, and how a form is read and written.</summary>
internal static class Forms
{
    private static readonly Dictionary<string, Type> KnownKinds = new(StringComparer.Ordinal)
    {
        ["site"] = typeof(SiteAdopted),
        ["entry"] = typeof(Entry),
        ["remark"] = typeof(Remark),
        ["correction"] = typeof(Correction),
        ["state"] = typeof(EquipmentStateChanged),
        ["carry"] = typeof(Carry),
        ["carry-close"] = typeof(CarryClosed),
        ["plugins"] = typeof(PluginTrusted),
        ["handover-prepared"] = typeof(HandoverPrepared),
        ["handover-seen"] = typeof(HandoverSeen),
        ["handover-missed"] = typeof(HandoverMissed),
        ["handover-question"] = typeof(HandoverQuestion),
        ["handover-answer"] = typeof(HandoverAnswer),
        ["handover-accepted"] = typeof(HandoverAccepted),
        ["handover-refused"] = typeof(HandoverRefused),
        ["handover-relief"] = typeof(HandoverRelief),
        ["handover-not-yet"] = typeof(HandoverNotYet),
        ["handover-continued"] = typeof(HandoverContinued),
        ["handover-countersigned"] = typeof(HandoverCountersigned),
        ["person"] = typeof(PersonChanged),
        ["carry-confirm"] = typeof(CarryConfirmed),
        ["order"] = typeof(OrderGiven),
        ["order-seen"] = typeof(OrderSeen),
        ["order-withdrawn"] = typeof(OrderWithdrawn),
        ["answer"] = typeof(FindingAnswered),
        ["upset"] = typeof(UpsetDeclared),
        ["department"] = typeof(DepartmentNote),
        ["roster"] = typeof(RosterChange),
        ["clock"] = typeof(ClockJumped),
        ["fit"] = typeof(FitAdopted),
    };

    public static readonly JsonSerializerOptions Options = new(BodyForms.Default.Options)
    {
        AllowDuplicateProperties = false,
        TypeInfoResolver = BodyForms.Default.WithAddedModifier(RequireWhatCannotBeNull),
    };

    /// <summary>The body in today's form; raw when its kind or its form is not known here.</summary>
    public static RecordBody Read(int version, string kind, ReadOnlySpan<byte> body)
    {
        if (version != JournalRecord.Version || !KnownKinds.TryGetValue(kind, out var form))
            return Raw(kind, body);
        try
        {
            var read = (RecordBody)JsonSerializer.Deserialize(body, Options.GetTypeInfo(form))!;
            return read is Correction { Readings.Count: 0 } ? Raw(kind, body) : read;
        }
        catch (JsonException)
        {
            return Raw(kind, body);
        }
    }

    private static UnknownBody Raw(string kind, ReadOnlySpan<byte> body) =>
        new(kind, (JsonElement)JsonSerializer.Deserialize(body, Options.GetTypeInfo(typeof(JsonElement)))!);

    public static void Write(Utf8JsonWriter to, RecordBody body)
    {
        if (body is UnknownBody unknown)
            unknown.Raw.WriteTo(to);
        else
            JsonSerializer.Serialize(to, body, Options.GetTypeInfo(body.GetType()));
    }

    private static void RequireWhatCannotBeNull(JsonTypeInfo form)
    {
        foreach (var property in form.Properties.Where(p => p.Set is not null || p.AssociatedParameter is not null))
        {
            property.IsRequired = property.PropertyType.IsValueType
                ? Nullable.GetUnderlyingType(property.PropertyType) is null
                : !property.IsGetNullable;
        }
    }
}

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    IgnoreReadOnlyProperties = true,
    RespectNullableAnnotations = true,
    Converters = [typeof(NumberAsText), typeof(TimeAsText), typeof(LevelAsText), typeof(ByTagInOrder)])]
[JsonSerializable(typeof(State))]
[JsonSerializable(typeof(Envelope))]
[JsonSerializable(typeof(JsonElement))]
[JsonSerializable(typeof(SiteAdopted))]
[JsonSerializable(typeof(Entry))]
[JsonSerializable(typeof(Remark))]
[JsonSerializable(typeof(Correction))]
[JsonSerializable(typeof(EquipmentStateChanged))]
[JsonSerializable(typeof(Carry))]
[JsonSerializable(typeof(PluginTrusted))]
[JsonSerializable(typeof(CarryClosed))]
[JsonSerializable(typeof(HandoverPrepared))]
[JsonSerializable(typeof(HandoverSeen))]
[JsonSerializable(typeof(HandoverMissed))]
[JsonSerializable(typeof(HandoverQuestion))]
[JsonSerializable(typeof(HandoverAnswer))]
[JsonSerializable(typeof(HandoverAccepted))]
[JsonSerializable(typeof(HandoverRefused))]
[JsonSerializable(typeof(HandoverRelief))]
[JsonSerializable(typeof(HandoverNotYet))]
[JsonSerializable(typeof(HandoverContinued))]
[JsonSerializable(typeof(HandoverCountersigned))]
[JsonSerializable(typeof(PersonChanged))]
[JsonSerializable(typeof(CarryConfirmed))]
[JsonSerializable(typeof(OrderGiven))]
[JsonSerializable(typeof(OrderSeen))]
[JsonSerializable(typeof(OrderWithdrawn))]
[JsonSerializable(typeof(FindingAnswered))]
[JsonSerializable(typeof(UpsetDeclared))]
[JsonSerializable(typeof(DepartmentNote))]
[JsonSerializable(typeof(RosterChange))]
[JsonSerializable(typeof(ClockJumped))]
[JsonSerializable(typeof(FitAdopted))]
internal sealed partial class BodyForms : JsonSerializerContext;

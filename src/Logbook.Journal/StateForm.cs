using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Logbook.Journal;

/// <summary>A state as bytes and back, so that it may be kept beside the journal. One state has one form.</summary>
public static class StateForm
{
    /// <summary>Names the fold that made a state: another build of it may see other things in the same records.</summary>
    public static string Fold { get; } = typeof(State).Module.ModuleVersionId.ToString("N");

    /// <summary>Canonical, since what a state holds by name has another order in each process.</summary>
    public static byte[] Write(State state) => CanonicalJson.Write(JsonSerializer.SerializeToElement(state, Forms.Options.GetTypeInfo(typeof(State))));

    /// <summary>The state; null when the bytes are none.</summary>
    public static State? Read(ReadOnlySpan<byte> bytes)
    {
        try
        {
            var state = (State?)JsonSerializer.Deserialize(bytes, Forms.Options.GetTypeInfo(typeof(State)));
            return state?.Files is { } files ? state.WithFiles(files) : state;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}

/// <summary>What is known by tag or code: read without regard to case, written in one order.</summary>
internal sealed class ByTagInOrder : JsonConverterFactory
{
    public override bool CanConvert(Type typeToConvert) =>
        typeToConvert.IsGenericType && typeToConvert.GetGenericTypeDefinition() == typeof(ImmutableDictionary<,>)
        && typeToConvert.GenericTypeArguments[0] == typeof(string);

    public override JsonConverter CreateConverter(Type typeToConvert, JsonSerializerOptions options) =>
        (JsonConverter)Activator.CreateInstance(typeof(Of<>).MakeGenericType(typeToConvert.GenericTypeArguments[1]))!;

    private sealed class Of<T> : JsonConverter<ImmutableDictionary<string, T>>
    {
        public override ImmutableDictionary<string, T> Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        {
            var byTag = ImmutableDictionary.CreateBuilder<string, T>(StringComparer.OrdinalIgnoreCase);
            while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
            {
                var tag = reader.GetString()!;
                reader.Read();
                byTag[tag] = (T)JsonSerializer.Deserialize(ref reader, options.GetTypeInfo(typeof(T)))!;
            }

            return byTag.ToImmutable();
        }

        public override void Write(Utf8JsonWriter writer, ImmutableDictionary<string, T> value, JsonSerializerOptions options)
        {
            writer.WriteStartObject();
            foreach (var (tag, one) in value.OrderBy(pair => pair.Key, StringComparer.Ordinal))
            {
                writer.WritePropertyName(tag);
                JsonSerializer.Serialize(writer, one, options.GetTypeInfo(typeof(T)));
            }

            writer.WriteEndObject();
        }
    }
}

using System.Text.Json;

namespace RoutingRules.Fixing;

/// <summary>One operation of a <see cref="JsonPatch"/>.</summary>
public sealed class JsonPatchOperation
{
    /// <summary>What it does: <c>add</c>, <c>remove</c>, <c>replace</c>, <c>move</c>, <c>copy</c> or <c>test</c>.</summary>
    public required string Op { get; init; }

    /// <summary>The JSON Pointer (RFC 6901) of the place.</summary>
    public required string Path { get; init; }

    /// <summary>Where a value is moved or copied from; null for other operations.</summary>
    public string? From { get; init; }

    /// <summary>The value of <c>add</c>, <c>replace</c> and <c>test</c>; null for other operations.</summary>
    public JsonElement? Value { get; init; }

    internal void WriteTo(Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteString("op", Op);
        if (From is not null)
        {
            json.WriteString("from", From);
        }

        json.WriteString("path", Path);
        if (Value is { } value)
        {
            json.WritePropertyName("value");
            value.WriteTo(json);
        }

        json.WriteEndObject();
    }
}

using System.Text.Json;

namespace RoutingRules.Reports.FindingReports;

/// <summary>Members that several JSON answers write alike.</summary>
internal static class JsonMembers
{
    /// <summary>A whole document: an object with the version of its schema, then a line break.</summary>
    public static void WriteDocument(Stream output, Action<Utf8JsonWriter> members)
    {
        using (var json = new Utf8JsonWriter(output, JsonReport.Layout))
        {
            json.WriteStartObject();
            json.WriteNumber("schemaVersion", 1);
            members(json);
            json.WriteEndObject();
        }

        output.Write("\n"u8);
    }

    /// <summary>A list of objects.</summary>
    public static void WriteObjects<T>(Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> members)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStartObject();
            members(item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>A number, or nothing at all.</summary>
    public static void WriteOptional(Utf8JsonWriter json, string name, long? number)
    {
        if (number is { } known)
        {
            json.WriteNumber(name, known);
        }
    }

    /// <summary>A text, or nothing at all.</summary>
    public static void WriteOptional(Utf8JsonWriter json, string name, string? text)
    {
        if (text is not null)
        {
            json.WriteString(name, JsonReport.Whole(text));
        }
    }

    /// <summary>A list of texts.</summary>
    public static void WriteList<T>(Utf8JsonWriter json, string name, IEnumerable<T> items)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStringValue(JsonReport.Whole(item!.ToString()!));
        }

        json.WriteEndArray();
    }

    /// <summary>The word of a schema for a constant: <c>FreeReserved</c> is <c>free-reserved</c>.</summary>
    public static string Word<T>(T constant)
        where T : struct, Enum =>
        string.Concat(
            constant
                .ToString()
                .Select((letter, at) => char.IsAsciiLetterUpper(letter) ? $"{(at == 0 ? "" : "-")}{char.ToLowerInvariant(letter)}" : letter.ToString())
        );
}

using System.Globalization;
using System.Text;
using System.Text.Json;

namespace RoutingRules.Schema;

/// <summary>Turns NJsonSchema's paths, such as <c>#/rig.devices[0].id</c>, into JSON Pointers (RFC 6901).</summary>
internal static class SchemaPath
{
    /// <summary>The pointer of a path.</summary>
    /// <param name="path">Names joined by dots, indices in brackets; null or <c>#</c> for the whole document.</param>
    /// <param name="root">The document: names with dots or brackets of their own can only be told apart by looking.</param>
    public static string ToPointer(string? path, JsonElement root)
    {
        var pointer = new StringBuilder();
        var rest = (path ?? "").AsSpan().TrimStart('#').TrimStart('/');
        JsonElement? at = root;
        while (!rest.IsEmpty)
        {
            var close = rest.IndexOf(']');
            if (
                at is not { ValueKind: JsonValueKind.Object }
                && rest[0] == '['
                && close > 0
                && int.TryParse(rest[1..close], NumberStyles.None, CultureInfo.InvariantCulture, out var index)
            )
            {
                pointer.Append(CultureInfo.InvariantCulture, $"/{index}");
                at = at is { ValueKind: JsonValueKind.Array } list && index < list.GetArrayLength() ? list[index] : null;
                rest = rest[(close + 1)..];
            }
            else
            {
                rest = rest[0] == '.' ? rest[1..] : rest;
                var name = Name(rest, at);
                pointer.Append('/').Append(name.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal));
                at = at is { ValueKind: JsonValueKind.Object } parent ? Member(parent, name) : null;
                rest = rest[name.Length..];
            }
        }

        return pointer.ToString();
    }

    /// <summary>The longest member name that the path goes on with, or what stands before the next separator when none fits.</summary>
    private static string Name(ReadOnlySpan<char> rest, JsonElement? at)
    {
        var longest = "";
        if (at is { ValueKind: JsonValueKind.Object } parent)
        {
            foreach (var member in parent.EnumerateObject())
            {
                var name = NameOf(member);
                if (
                    name.Length > longest.Length
                    && rest.StartsWith(name, StringComparison.Ordinal)
                    && (rest.Length == name.Length || rest[name.Length] is '.' or '[')
                )
                {
                    longest = name;
                }
            }
        }

        var end = rest.IndexOfAny('.', '[');
        return longest.Length > 0 ? longest : (end <= 0 ? rest : rest[..end]).ToString();
    }

    private static JsonElement? Member(JsonElement parent, string name)
    {
        foreach (var member in parent.EnumerateObject())
        {
            if (NameOf(member) == name)
            {
                return member.Value;
            }
        }

        return null;
    }

    /// <summary>The name of a member; nothing for one with half of a surrogate pair, which no path can hold.</summary>
    private static string NameOf(JsonProperty member)
    {
        try
        {
            return member.Name;
        }
        catch (InvalidOperationException)
        {
            return "";
        }
    }
}

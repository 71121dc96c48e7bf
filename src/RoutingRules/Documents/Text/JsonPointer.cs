using System.Text;

namespace RoutingRules.Documents.Text;

/// <summary>Parts of JSON Pointers (RFC 6901).</summary>
internal static class JsonPointer
{
    public static void Append(StringBuilder pointer, string part) => pointer.Append('/').Append(Escape(part));

    public static string Escape(string part) => part.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal);

    public static string Unescape(string part) => part.Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal);
}

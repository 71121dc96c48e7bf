using RoutingRules.Documents.Tables;

namespace RoutingRules.Reports.Schemas;

/// <summary>Pieces of shapes of documents that the engine writes and never reads.</summary>
internal static class ShapeParts
{
    /// <summary>A member that is always there.</summary>
    public static MemberShape Must(string name, ValueShape value, string doc) => new(name, value, true, doc);

    /// <summary>A member that may be absent.</summary>
    public static MemberShape May(string name, ValueShape value, string doc) => new(name, value, false, doc);

    /// <summary>An object to which later versions may add members.</summary>
    public static ObjectShape Open(string definition, string doc, params MemberShape[] members) => new(definition, definition, doc, members, [], open: true);

    /// <summary>One of a few words.</summary>
    public static ClosedWordKind<int> Words(string definition, params string[] words) => new(definition, [.. words.Select((word, i) => (word, i))]);
}

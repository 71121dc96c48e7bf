namespace RoutingRules.Reading;

/// <summary>Brings the text of a document from one format version to the next; the versions before stay readable for ever.</summary>
internal abstract class Upgrader
{
    /// <summary>The version it reads; it writes the next one.</summary>
    public abstract int From { get; }

    /// <summary>The document in the next version. The text is well-formed JSON as far as its <c>schemaVersion</c>, not more.</summary>
    public abstract byte[] Upgrade(ReadOnlySpan<byte> utf8);
}

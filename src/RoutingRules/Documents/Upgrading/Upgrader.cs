namespace RoutingRules.Documents.Upgrading;

/// <summary>Brings the text of a document from one format version to the next; the versions before stay readable for ever.</summary>
/// <remarks>
/// It changes the text where the versions differ and leaves every other byte as it is, whatever stands under <c>extensions</c> included, and sets
/// <c>schemaVersion</c>. What it does not understand it leaves to the reader, which reports it. What it throws is caught and told as its fault.
/// </remarks>
internal abstract class Upgrader
{
    /// <summary>The version it reads; it writes the next one.</summary>
    public abstract int From { get; }

    /// <summary>The document in the next version. The text is well-formed JSON as far as its <c>schemaVersion</c>, not more.</summary>
    /// <param name="utf8">The document, without a byte order mark.</param>
    /// <param name="changes">Takes what was changed, for people, in the order of the text.</param>
    public abstract byte[] Upgrade(ReadOnlySpan<byte> utf8, ICollection<string> changes);
}

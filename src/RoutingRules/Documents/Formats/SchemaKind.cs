namespace RoutingRules.Documents.Formats;

/// <summary>The kinds of documents that have a published schema.</summary>
public enum SchemaKind
{
    /// <summary>A show.</summary>
    Show,

    /// <summary>A device profile that stands alone.</summary>
    DeviceProfile,

    /// <summary>A configuration of the engine.</summary>
    Config,

    /// <summary>The JSON report.</summary>
    Report,

    /// <summary>A list of waivers.</summary>
    Waivers,

    /// <summary>A baseline of known findings.</summary>
    Baseline,

    /// <summary>The answer to why a feed or a line is where it is.</summary>
    Why,

    /// <summary>A running order.</summary>
    Run,

    /// <summary>What differs between two shows.</summary>
    Comparison,

    /// <summary>Changeovers between shows, or of a running order.</summary>
    Changeover,

    /// <summary>The answer to what each loss does to a show.</summary>
    Impact,

    /// <summary>What mending a show came to.</summary>
    Fix,

    /// <summary>The account of a list that was read into a show.</summary>
    Import,
}

namespace RoutingRules.Documents.Tables;

/// <summary>Bounds that keep the reader's memory and time in proportion; documents beyond them are refused with a finding.</summary>
public sealed record ReadLimits
{
    /// <summary>The bounds used when none are given.</summary>
    public static ReadLimits Default { get; } = new();

    /// <summary>Longest document in bytes; checked before a file is read. 64 MiB.</summary>
    public long Bytes { get; init; } = 64L * 1024 * 1024;

    /// <summary>Bytes of documents of one archive together, as unpacked, after which no further one is unpacked. 4 GiB.</summary>
    public long ArchiveBytes { get; init; } = 4L * 1024 * 1024 * 1024;

    /// <summary>Deepest nesting of objects and lists. 32.</summary>
    public int Depth { get; init; } = 32;

    /// <summary>Deepest nesting inside one <c>extensions</c> member. 64.</summary>
    public int ExtensionDepth { get; init; } = 64;

    /// <summary>Most elements of one list. 100,000.</summary>
    public int Elements { get; init; } = 100_000;

    /// <summary>Most problems that get their own finding; one more finding counts the rest. 200.</summary>
    public int Problems { get; init; } = 200;
}

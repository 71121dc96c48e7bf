using RoutingRules.Waivers;

namespace RoutingRules.Model;

/// <summary>One document: rig, feeds, lines and patch.</summary>
/// <remarks>Immutable, with value equality over every member.</remarks>
public sealed record Show
{
    /// <summary>The format version the document was written in; the reader brings older ones to 1.</summary>
    public int SchemaVersion { get; init; } = 1;

    /// <summary>What the show is called.</summary>
    public required string Title { get; init; }

    /// <summary>Where it takes place.</summary>
    public string? Venue { get; init; }

    /// <summary>The day of the show.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>The revision of the document, printed on every sheet.</summary>
    public string? Revision { get; init; }

    /// <summary>The equipment and how it is cabled.</summary>
    public required Rig Rig { get; init; }

    /// <summary>What mixes shall reach, in list order.</summary>
    public ValueList<Feed> Feeds { get; init; }

    /// <summary>What stage sources shall reach, in list order.</summary>
    public ValueList<Line> Lines { get; init; }

    /// <summary>The routes and streams; empty when absent.</summary>
    public Patch Patch { get; init; } = new();

    /// <summary>Decisions to live with findings of this show for a time; their <see cref="Waiver.Scope"/> is empty.</summary>
    public ValueList<Waiver> Waivers { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }

    /// <summary>Which show was found to be what a document can say; a copy made by <c>with</c> names the one it was made from.</summary>
    internal Admission Admitted { get; private set; }

    /// <summary>Notes that this show was looked at.</summary>
    /// <param name="isWhole">False when it is what was left of a document with mistakes.</param>
    internal void Admit(bool isWhole) => Admitted = new(this, isWhole);
}

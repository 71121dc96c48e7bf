namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>Kinds of things that are loaded, in the order of the list.</summary>
public enum SheetKitKind
{
    /// <summary>Microphones, wireless ones too.</summary>
    Microphone,

    /// <summary>Direct boxes.</summary>
    DirectBox,

    /// <summary>What lines of line level name as their equipment.</summary>
    Other,

    /// <summary>Stands.</summary>
    Stand,

    /// <summary>Cables, looms and network cables.</summary>
    Cable,

    /// <summary>Receiver packs.</summary>
    Pack,
}

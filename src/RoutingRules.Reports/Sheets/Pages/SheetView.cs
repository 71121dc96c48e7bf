namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>Whose left and right a sheet uses.</summary>
public enum SheetView
{
    /// <summary>As the audience sees the stage: house left is stage right.</summary>
    House,

    /// <summary>As the performers see it, facing the audience: stage right is house left.</summary>
    Stage,
}

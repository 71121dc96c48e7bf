namespace RoutingRules.Configuration;

/// <summary>What stands between the cells of a list.</summary>
public enum ListSeparator
{
    /// <summary>A comma, as RFC 4180 has it.</summary>
    Comma,

    /// <summary>A semicolon, as spreadsheets write where the comma is the decimal sign.</summary>
    Semicolon,

    /// <summary>A tab.</summary>
    Tab,
}

global using CanopySim.Shell;
global using Xunit;

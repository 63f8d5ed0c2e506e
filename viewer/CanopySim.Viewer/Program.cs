return CanopySim.Viewer.ViewerApp.Run(args);
